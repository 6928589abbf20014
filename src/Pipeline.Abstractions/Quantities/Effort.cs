namespace Pipeline.Abstractions;

/// <summary>
/// How attended time grows with size: some minutes whatever the size, then so many per cm² while the work is fiddly,
/// and fewer beyond a knee, where a broad brush or a wide fan takes over. All figures are zero or more.
/// </summary>
/// <param name="FixedMinutes">For picking up, finding the place, putting down.</param>
/// <param name="MinutesPerSquareCentimetre">Up to the knee.</param>
/// <param name="KneeSquareCentimetres">Where broad work begins.</param>
/// <param name="MinutesPerSquareCentimetreBeyond">Past the knee.</param>
public sealed record Effort(
    double FixedMinutes,
    double MinutesPerSquareCentimetre,
    double KneeSquareCentimetres,
    double MinutesPerSquareCentimetreBeyond)
{
    /// <summary>The attended time for one unit of a size.</summary>
    public Attended For(SurfaceSize size)
    {
        var fiddly = Math.Min(size.SquareCentimetres, KneeSquareCentimetres);
        var broad = size.SquareCentimetres - fiddly;
        return new Attended(FixedMinutes + fiddly * MinutesPerSquareCentimetre + broad * MinutesPerSquareCentimetreBeyond);
    }
}
