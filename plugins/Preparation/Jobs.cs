using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing;

/// <summary>Questions verbs of preparation ask of a job.</summary>
internal static class Jobs
{
    /// <summary>True if any area the step acts on is made of such a material.</summary>
    public static bool IsAnywhere(this Job job, Predicate<Material> such) => job.Areas.Any(area => such(job.Model.MaterialOf(area)));

    /// <summary>A piece worked with blade, drill or abrasive: worked wet, it has to dry.</summary>
    public static Deed.Prepare Worked(this Job job, Preparation what, bool? wet)
    {
        var dries = wet == true ? Settings.Dries(job) : null;
        return new Deed.Prepare(what, dries?.Sets, dries is null ? Carrier.None : Carrier.Water)
        {
            IsWet = wet,
            IsFromFile = dries is { IsFromFile: true },
        };
    }
}

/// <summary>Work in a bath or under a lamp: hands for every unit, then the whole lot stands by itself.</summary>
internal static class Baths
{
    public static Work WorkOf(Attended handsPerUnit, int units, Drying bath, double setUp, double putAway) => new()
    {
        PerUnit = handsPerUnit * units,
        Together = true,
        Unattended = bath,
        SetUp = new Attended(setUp),
        PutAway = new Attended(putAway),
    };
}

/// <summary>Counts that a file gives.</summary>
internal static class Counts
{
    public static int Checked(string particular, int count) => count is >= 1 and <= 500
        ? count
        : throw new ParticularException(particular, FormattableString.Invariant($"{count} {particular} make no sense; say 1 to 500."));
}
