namespace Pipeline.Abstractions;

/// <summary>A named region of a part.</summary>
/// <param name="Name">Unique within the model.</param>
/// <param name="Part">The part it belongs to.</param>
/// <param name="Size">How much there is to paint.</param>
public sealed record Area(string Name, string Part, SurfaceSize Size)
{
    /// <summary>Meant to shine when finished (a lens, bright metal), or not; null if the file does not say.</summary>
    public bool? Shines { get; init; }
}

/// <summary>What a piece is wanted for when it is due; decides how dry it must be by then.</summary>
public enum Purpose
{
    /// <summary>To be looked at: its last coat can be handled.</summary>
    Display,

    /// <summary>To be wrapped and sent: its last coat has cured.</summary>
    Packing,

    /// <summary>To be picked up again and again in play: its last coat has cured.</summary>
    Play,
}

/// <summary>One kind of piece.</summary>
public sealed record Model
{
    /// <summary>Unique within the batch.</summary>
    public required string Name { get; init; }

    /// <summary>The kit it belongs to.</summary>
    public required string Kit { get; init; }

    /// <summary>Where the file says it.</summary>
    public required Place Place { get; init; }

    /// <summary>How many identical units, at least 1.</summary>
    public required int Count { get; init; }

    /// <summary>What it is made of.</summary>
    public required Material Material { get; init; }

    /// <summary>Its areas in file order.</summary>
    public required Sequence<Area> Areas { get; init; }

    /// <summary>The part names in file order; a model without parts has one, named like the model.</summary>
    public required Sequence<string> Parts { get; init; }

    /// <summary>What a part is made of where it differs from the model; keyed by position in <see cref="Parts"/>, null for the same.</summary>
    public Sequence<Material?> PartMaterials { get; init; }

    /// <summary>Picked up again and again when it is finished: a token, a playing piece.</summary>
    public bool IsHandled { get; init; }

    /// <summary>What it is wanted for when it is due.</summary>
    public Purpose Purpose { get; init; }

    /// <summary>The state its last coat must have reached when it is due.</summary>
    public DryingState ReadyAt => Purpose == Purpose.Display ? DryingState.Handleable : DryingState.Cured;

    /// <summary>Where it comes from, if that is colder than the bench; null if the file does not say.</summary>
    public Storage? Storage { get; init; }

    /// <summary>The size of all areas together.</summary>
    public SurfaceSize Size => new(Areas.Sum(area => area.Size.SquareCentimetres));

    /// <summary>What an area is made of.</summary>
    public Material MaterialOf(Area area)
    {
        for (var i = 0; i < PartMaterials.Count; i++)
        {
            if (Parts[i] == area.Part && PartMaterials[i] is { } material)
                return material;
        }

        return Material;
    }
}

/// <summary>What a verb is asked to do: the model, the areas acted on, and the names the step goes by.</summary>
/// <param name="Model">The model whose route the step is in.</param>
/// <param name="Areas">The areas acted on, resolved and without repeats, in the model's order.</param>
/// <param name="Named">The names as resolved for the verb's <see cref="Target"/>: areas, masks or parts.</param>
/// <param name="As">The step's own name; for a step without <c>as</c>, the areas parted by <c>+</c>.</param>
public sealed record Job(Model Model, Sequence<Area> Areas, Sequence<string> Named, string As)
{
    /// <summary>The trade's tables as they hold for the batch.</summary>
    public Tables Tables { get; init; } = Tables.Empty;

    /// <summary>The size of the areas acted on together.</summary>
    public SurfaceSize Size => new(Areas.Sum(area => area.Size.SquareCentimetres));
}

/// <summary>One entry of a route, bound: all names are things, all quantities have units.</summary>
public sealed record Step
{
    /// <summary>Position in the route after schemes are followed, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>The verb's name.</summary>
    public required string Verb { get; init; }

    /// <summary>The verb's kind.</summary>
    public required StepKind Kind { get; init; }

    /// <summary>Where the file says it: the verb's key.</summary>
    public required Place Place { get; init; }

    /// <summary>Where the scheme that holds it was followed, or null.</summary>
    public Place? FollowedFrom { get; init; }

    /// <summary>The scheme that holds it, or null.</summary>
    public string? Scheme { get; init; }

    /// <summary>Its name in the file (<c>as</c>), or the areas parted by <c>+</c>.</summary>
    public required string As { get; init; }

    /// <summary>The areas it names, resolved, in the model's order.</summary>
    public required Sequence<string> Areas { get; init; }

    /// <summary>What it does.</summary>
    public required Sequence<Deed> Deeds { get; init; }

    /// <summary>What it costs and asks of the bench.</summary>
    public required Work Work { get; init; }

    /// <summary>The usual cautions.</summary>
    public Sequence<Caution> Cautions { get; init; }

    /// <summary>The air where the step is done, if that is not the bench; null for the bench's.</summary>
    public Climate? Climate { get; init; }

    /// <summary>What protects the painter at this step, where the file says something else than for the bench.</summary>
    public Protection Protection { get; init; } = Protection.Unsaid;

    /// <summary>The painter's remark, or null.</summary>
    public string? Note { get; init; }

    /// <summary>Indexes of steps of the same route that must be finished before, because the file says <c>after</c>.</summary>
    public Sequence<int> After { get; init; }

    /// <summary>Rules silenced here, with the painter's reasons.</summary>
    public Sequence<Silence> Silences { get; init; }

    /// <summary>The coats it lays.</summary>
    public IEnumerable<Deed.Lay> Lays => Deeds.OfType<Deed.Lay>();
}

/// <summary>A rule silenced with a reason.</summary>
/// <param name="Rule">The rule's name.</param>
/// <param name="Reason">The painter's words, never empty.</param>
/// <param name="Place">Where the file says it.</param>
public sealed record Silence(string Rule, string Reason, Place Place);
