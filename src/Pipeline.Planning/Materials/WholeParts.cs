namespace Pipeline.Planning;

/// <summary>
/// A thinned mix in parts that can be counted out: a share of 40 % of the mix is 3 : 2, not 1 : 0.67. The paints keep the parts the painter
/// wrote, or a multiple of them.
/// </summary>
internal static class WholeParts
{
    // Twentieths of what was asked are lost in the cup and on the stirrer (common practice).
    private const double Near = 0.05;
    private const double Exactly = 0.005;

    // So many parts of one thing are still counted out; more only where nothing smaller comes near.
    private const int Few = 10;
    private const int Many = 20;

    /// <summary>
    /// By what to multiply the paints' parts, and how many parts of thinner go to them then. Where no whole numbers come near, the paints as
    /// they are and the thinner as it is reckoned.
    /// </summary>
    /// <param name="paints">The parts of each paint as written.</param>
    /// <param name="thinner">The parts of thinner to these; above 0.</param>
    public static (int Times, double Thinner) Of(IReadOnlyList<double> paints, double thinner)
    {
        // as written, if the thinner then comes out even or nearly so
        if (IsNear(1, Exactly) || (paints.Any(part => part > 1) && IsNear(1, Near)))
            return (1, Math.Round(thinner));
        foreach (var (most, near) in new[] { (Few, Exactly), (Few, Near), (Many, Near) })
        {
            for (var times = 1; times <= most; times++)
            {
                if (IsNear(times, near) && Math.Round(times * thinner) <= most && paints.All(part => times * part <= most && IsWhole(times * part)))
                    return (times, Math.Round(times * thinner));
            }
        }

        return (1, thinner);

        bool IsNear(int times, double near) =>
            Math.Round(times * thinner) is >= 1 and var whole && Math.Abs(whole - (times * thinner)) <= (near * times * thinner) + 1e-9;
    }

    private static bool IsWhole(double part) => Math.Abs(part - Math.Round(part)) < 1e-6;
}
