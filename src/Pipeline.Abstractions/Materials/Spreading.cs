namespace Pipeline.Abstractions;

/// <summary>
/// How far paint goes. 1 mL spread over 1 m² is 1 µm thick; what dries away is the part that is not solid.
/// The spreading-rate and wet-film formulas are those of coating data sheets; thinned solids and need follow by arithmetic.
/// </summary>
public static class Spreading
{
    /// <summary>Theoretical spreading rate in m² per litre: volume solids in % × 10 / dry film in µm.</summary>
    public static double SquareMetresPerLitre(double volumeSolids, double dryFilmMicrometres) =>
        volumeSolids * 100 * 10 / Positive(dryFilmMicrometres);

    /// <summary>Wet film in µm that dries to a dry film: dry film × 100 / volume solids in %.</summary>
    /// <param name="dryFilmMicrometres">The dry film.</param>
    /// <param name="volumeSolids">The part of the wet volume that stays, above 0 to 1.</param>
    public static double WetFilmMicrometres(double dryFilmMicrometres, double volumeSolids) => dryFilmMicrometres / Positive(volumeSolids);

    /// <summary>Volume solids after thinning: they thin out with the volume.</summary>
    /// <param name="volumeSolids">Of the paint, 0 to 1.</param>
    /// <param name="thinnerShareOfMix">Thinner as a share of the finished mix, 0 to below 1.</param>
    public static double Thinned(double volumeSolids, double thinnerShareOfMix) => volumeSolids * (1 - thinnerShareOfMix);

    /// <summary>mL that leave the cup to lay a dry film on an area, before what stays in the cup.</summary>
    /// <param name="squareCentimetres">The area.</param>
    /// <param name="dryFilmMicrometres">The dry film of all coats together.</param>
    /// <param name="volumeSolids">Of what is in the cup, above 0 to 1.</param>
    /// <param name="transferEfficiency">The part that lands on the piece, above 0 to 1.</param>
    public static double Millilitres(double squareCentimetres, double dryFilmMicrometres, double volumeSolids, double transferEfficiency) =>
        squareCentimetres / 10_000 * dryFilmMicrometres / Positive(volumeSolids) / Positive(transferEfficiency);

    private static double Positive(double value) =>
        value > 0 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "Must be more than zero.");
}
