using NodaTime;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Everything that is planned together: one or more files, bound. Names are things, quantities have units.</summary>
public sealed record Batch
{
    /// <summary>Its name; of several files, their names joined by <c> + </c>.</summary>
    public required string Name { get; init; }

    /// <summary>The files it was read from, as given.</summary>
    public required Sequence<string> Files { get; init; }

    /// <summary>When everything should be finished, or null.</summary>
    public Due? Due { get; init; }

    /// <summary>Where and when the work is done.</summary>
    public required Bench Bench { get; init; }

    /// <summary>Paints and mixes by name, in file order.</summary>
    public Sequence<Paint> Paints { get; init; }

    /// <summary>The trade's tables with what the files say otherwise.</summary>
    public Tables Tables { get; init; } = Tables.Empty;

    /// <summary>The kits in file order.</summary>
    public Sequence<Kit> Kits { get; init; }

    /// <summary>How close to the low figures the plan is laid.</summary>
    public Pace Pace { get; init; }

    /// <summary>What is best, after the due times, most important first. Always all four.</summary>
    public Sequence<BatchAim> Aims { get; init; } = [BatchAim.FinishSoon, BatchAim.FewChanges, BatchAim.ShortMasks, BatchAim.EvenDays];

    /// <summary>Rules silenced for the whole batch.</summary>
    public Sequence<Silence> Silences { get; init; }

    /// <summary>All routes in file order.</summary>
    public IEnumerable<Route> Routes => Kits.SelectMany(kit => kit.Routes);
}

/// <summary>A date and time in the bench's zone by which something should be finished.</summary>
public sealed record Due(LocalDateTime By, Place Place);

/// <summary>How drying times are used when a plan is laid.</summary>
public enum Pace
{
    /// <summary>To the comfortable end of each range.</summary>
    Comfortable,

    /// <summary>To the low figure; the plan shows what it risks.</summary>
    Brisk,
}

/// <summary>What makes a plan better, after the due times.</summary>
public enum BatchAim
{
    /// <summary>The last piece is finished soonest.</summary>
    FinishSoon,

    /// <summary>Fewest clean-outs and set-ups.</summary>
    FewChanges,

    /// <summary>Masks on and half-worked effects wait for the shortest time.</summary>
    ShortMasks,

    /// <summary>Days are evenly filled.</summary>
    EvenDays,
}

/// <summary>A box or order.</summary>
public sealed record Kit(string Name, Place Place, Sequence<Route> Routes);

/// <summary>A model and its route, schemes followed.</summary>
public sealed record Route
{
    /// <summary>The model.</summary>
    public required Model Model { get; init; }

    /// <summary>The steps in file order.</summary>
    public required Sequence<Step> Steps { get; init; }

    /// <summary>Steps whose date and time the painter has decided (<c>at</c>): step index to start.</summary>
    public Sequence<Pin> Pins { get; init; }

    /// <summary>When this model should be finished: its own due time, or its kit's, or the batch's; null for none.</summary>
    public Due? Due { get; init; }

    /// <summary>How much a minute of lateness of this model weighs against others; 1 unless the file says.</summary>
    public double DueWeight { get; init; } = 1;

    /// <summary>Steps that are planned at a pace of their own, whatever the batch's.</summary>
    public Sequence<StepPace> Paces { get; init; }

    /// <summary>Rules silenced for this model.</summary>
    public Sequence<Silence> Silences { get; init; }
}

/// <summary>How close to the low figures a step comes after what it waits for.</summary>
public sealed record StepPace(int Step, Pace Pace);

/// <summary>A start the painter has decided, in the bench's zone.</summary>
public sealed record Pin(int Step, LocalDateTime At, Place Place);
