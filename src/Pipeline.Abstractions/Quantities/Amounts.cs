using System.Globalization;

namespace Pipeline.Abstractions;

/// <summary>How much there is to paint, in cm². Zero or more. The default is none.</summary>
public readonly record struct SurfaceSize : IComparable<SurfaceSize>
{
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or not a number.</exception>
    public SurfaceSize(double squareCentimetres) => SquareCentimetres = Checked.NotNegative(squareCentimetres);

    /// <summary>The size in cm².</summary>
    public double SquareCentimetres { get; }

    /// <summary>The larger sorts later.</summary>
    public int CompareTo(SurfaceSize other) => SquareCentimetres.CompareTo(other.SquareCentimetres);

    /// <summary>Both together.</summary>
    public static SurfaceSize operator +(SurfaceSize left, SurfaceSize right) => new(left.SquareCentimetres + right.SquareCentimetres);

    /// <summary>As a person writes it: <c>30 cm²</c>.</summary>
    public override string ToString() => SquareCentimetres.ToString("0.#", CultureInfo.InvariantCulture) + " cm²";
}

/// <summary>A volume of paint, in mL. Zero or more. The default is none.</summary>
public readonly record struct Volume : IComparable<Volume>
{
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or not a number.</exception>
    public Volume(double millilitres) => Millilitres = Checked.NotNegative(millilitres);

    /// <summary>The volume in mL.</summary>
    public double Millilitres { get; }

    /// <summary>The larger sorts later.</summary>
    public int CompareTo(Volume other) => Millilitres.CompareTo(other.Millilitres);

    /// <summary>Both together.</summary>
    public static Volume operator +(Volume left, Volume right) => new(left.Millilitres + right.Millilitres);

    /// <summary>As a person writes it: <c>7.5 mL</c>.</summary>
    public override string ToString() => Millilitres.ToString("0.#", CultureInfo.InvariantCulture) + " mL";
}

/// <summary>A part of a whole, from 0 to 1. The default is nothing of it.</summary>
public readonly record struct Share : IComparable<Share>
{
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 1, or not a number.</exception>
    public Share(double fraction) => Fraction = Checked.Between(fraction, 0, 1);

    /// <summary>From 0 to 1.</summary>
    public double Fraction { get; }

    /// <summary>The larger sorts later.</summary>
    public int CompareTo(Share other) => Fraction.CompareTo(other.Fraction);

    /// <summary>As a person writes it: <c>40 %</c>.</summary>
    public override string ToString() => (Fraction * 100).ToString("0.#", CultureInfo.InvariantCulture) + " %";
}

/// <summary>A temperature in °C, from −90 to 100. The default is 0 °C.</summary>
public readonly record struct Temperature : IComparable<Temperature>
{
    /// <exception cref="ArgumentOutOfRangeException">Outside −90 to 100 °C, or not a number.</exception>
    public Temperature(double degreesCelsius) => DegreesCelsius = Checked.Between(degreesCelsius, -90, 100);

    /// <summary>The temperature in °C.</summary>
    public double DegreesCelsius { get; }

    /// <summary>The warmer sorts later.</summary>
    public int CompareTo(Temperature other) => DegreesCelsius.CompareTo(other.DegreesCelsius);

    /// <summary>As a person writes it: <c>19 °C</c>.</summary>
    public override string ToString() => DegreesCelsius.ToString("0.#", CultureInfo.InvariantCulture) + " °C";
}
