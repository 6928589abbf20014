namespace Pipeline.Abstractions;

/// <summary>Time with the hands busy, in minutes. Zero or more, finite. The default is none.</summary>
public readonly record struct Attended : IComparable<Attended>
{
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or not a number.</exception>
    public Attended(double minutes) => Minutes = Checked.NotNegative(minutes);

    /// <summary>The time in minutes.</summary>
    public double Minutes { get; }

    /// <summary>The longer sorts later.</summary>
    public int CompareTo(Attended other) => Minutes.CompareTo(other.Minutes);

    /// <summary>One after the other.</summary>
    public static Attended operator +(Attended left, Attended right) => new(left.Minutes + right.Minutes);

    /// <summary>So many times.</summary>
    public static Attended operator *(Attended time, double times) => new(time.Minutes * times);

    /// <summary>As a person writes it: <c>25 min</c>.</summary>
    public override string ToString() => Spoken.Minutes(Minutes);
}

/// <summary>Time on the paint's own clock, in minutes. Zero or more, finite. The default is none.</summary>
public readonly record struct Drying : IComparable<Drying>
{
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or not a number.</exception>
    public Drying(double minutes) => Minutes = Checked.NotNegative(minutes);

    /// <summary>The time in minutes.</summary>
    public double Minutes { get; }

    /// <summary>So many hours.</summary>
    public static Drying Hours(double hours) => new(hours * 60);

    /// <summary>So many days of 24 hours.</summary>
    public static Drying Days(double days) => new(days * 24 * 60);

    /// <summary>The longer sorts later.</summary>
    public int CompareTo(Drying other) => Minutes.CompareTo(other.Minutes);

    /// <summary>So many times as long, for climate and number of coats.</summary>
    public static Drying operator *(Drying time, double times) => new(time.Minutes * times);

    /// <summary>Whether the left is the shorter.</summary>
    public static bool operator <(Drying left, Drying right) => left.Minutes < right.Minutes;

    /// <summary>Whether the left is the longer.</summary>
    public static bool operator >(Drying left, Drying right) => left.Minutes > right.Minutes;

    /// <summary>As a person writes it: <c>45 min</c>, <c>12 h</c>, <c>3 d</c>.</summary>
    public override string ToString() => Spoken.Minutes(Minutes);
}

/// <summary>
/// A drying time as the trade gives it: a low and a high figure at 20–23 °C and 45–55 % relative humidity.
/// Below the low figure is an error, up to nine tenths of the high one a warning, beyond that silence.
/// </summary>
public readonly record struct DryingRange
{
    /// <exception cref="ArgumentException">The high figure is below the low one.</exception>
    public DryingRange(Drying low, Drying high)
    {
        if (high < low)
            throw new ArgumentException("The high figure is below the low one.", nameof(high));
        (Low, High) = (low, high);
    }

    /// <summary>Less than this is an error.</summary>
    public Drying Low { get; }

    /// <summary>The cautious figure.</summary>
    public Drying High { get; }

    /// <summary>Nine tenths of the high figure, but never below the low: from here on nothing is said, and plans are laid to it.</summary>
    public Drying Comfortable => High * 0.9 < Low ? Low : High * 0.9;

    /// <summary>A range given in minutes.</summary>
    public static DryingRange Minutes(double low, double high) => new(new Drying(low), new Drying(high));

    /// <summary>A range given in hours.</summary>
    public static DryingRange Hours(double low, double high) => Minutes(low * 60, high * 60);

    /// <summary>A range given in days.</summary>
    public static DryingRange Days(double low, double high) => Minutes(low * 1440, high * 1440);

    /// <summary>One figure without a range, as a label gives it.</summary>
    public static DryingRange Exactly(Drying time) => new(time, time);

    /// <summary>Both figures so many times as long.</summary>
    public static DryingRange operator *(DryingRange range, double times) => new(range.Low * times, range.High * times);

    /// <summary>The range whose both figures are the longer of the two.</summary>
    public static DryingRange Longer(DryingRange left, DryingRange right) =>
        new(left.Low > right.Low ? left.Low : right.Low, left.High > right.High ? left.High : right.High);

    /// <summary>As a person writes it: <c>12–24 h</c>.</summary>
    public override string ToString() => Spoken.Range(Low.Minutes, High.Minutes);
}
