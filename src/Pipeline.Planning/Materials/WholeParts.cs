namespace Pipeline.Planning;

/// <summary>
/// A thinned mix in parts that can be counted out: a share of 40 % of the mix is 3 : 2, not 1 : 0.67. The paints keep the ratio the painter
/// wrote, not the figures: 2 parts thinned by 30 % of the mix are 7 : 3 like 1 part or 7.
/// </summary>
internal static class WholeParts
{
    // Twentieths of what was asked are lost in the cup and on the stirrer (common practice).
    private const double Near = 0.05;
    private const double Exactly = 0.005;

    // So many parts of one thing are still counted out; more only where nothing smaller comes near.
    private const int Few = 10;
    private const int Many = 20;

    // Parts are written to tenths, halves, thirds or the like; what no such number makes whole is not counted out.
    private const int MostParted = 20;

    /// <summary>
    /// By what to multiply the paints' parts, and how many parts of thinner go to them then: the smallest whole numbers that are exact, else
    /// the smallest that come near. Where none do, the paints in their smallest numbers and the thinner as it is reckoned.
    /// </summary>
    /// <param name="paints">The parts of each paint as written; above 0.</param>
    /// <param name="thinner">The parts of thinner to these; above 0.</param>
    public static (double Times, double Thinner) Of(IReadOnlyList<double> paints, double thinner)
    {
        if (Smallest(paints) is not { } smallest)
            return (1, thinner);
        // a half reckoned from other figures is the same half
        var (most, ofThinner) = (paints.Max() * smallest, Math.Round(thinner * smallest, 9));
        foreach (var (upTo, near) in new[] { (Few, Exactly), (Few, Near), (Many, Near) })
        {
            for (var times = 1; times * most <= upTo + 1e-6; times++)
            {
                if (IsNear(times, near) && Math.Round(times * ofThinner) <= upTo)
                    return (times * smallest, Math.Round(times * ofThinner));
            }
        }

        return (smallest, IsNear(1, Near) ? Math.Round(ofThinner) : ofThinner);

        bool IsNear(int times, double near) =>
            Math.Round(times * ofThinner) is >= 1 and var whole && Math.Abs(whole - (times * ofThinner)) <= (near * times * ofThinner) + 1e-9;
    }

    // What makes the parts the smallest whole numbers of the same ratio; null where nothing does.
    private static double? Smallest(IReadOnlyList<double> parts)
    {
        for (var times = 1; times <= MostParted; times++)
        {
            if (parts.All(part => IsWhole(times * part)))
                return times / (double)parts.Select(part => (long)Math.Round(times * part)).Aggregate(Divisor);
        }

        return null;
    }

    private static long Divisor(long one, long other) => other == 0 ? one : Divisor(other, one % other);

    private static bool IsWhole(double part) => Math.Abs(part - Math.Round(part)) < 1e-6 && part > 0.5;
}
