namespace Pipeline.Abstractions;

/// <summary>The four kinds of step; the triggers of a model's lifecycle.</summary>
public enum StepKind
{
    /// <summary>Work on the piece itself.</summary>
    Preparation,

    /// <summary>Covering what must not be painted.</summary>
    Masking,

    /// <summary>Laying something that stays.</summary>
    Coat,

    /// <summary>Taking something off: a mask, a failed coat, an effect cleaned back.</summary>
    Removal,
}

/// <summary>How a spraying tool is cleaned out before a load.</summary>
public enum ToolCleaning
{
    /// <summary>As the change of load asks for; planned.</summary>
    AsNeeded,

    /// <summary>Not at all: the painter fills the next paint on top.</summary>
    None,

    /// <summary>Flushed through, not taken apart.</summary>
    Flush,

    /// <summary>Taken apart and cleaned.</summary>
    Strip,
}

/// <summary>What a step costs the painter and asks of the bench. The file may override the times.</summary>
public sealed record Work
{
    private const int MostPasses = 100;

    private readonly int passes = 1;

    /// <summary>Hands busy, for one unit in one pass; for <see cref="Together"/>, for the whole lot.</summary>
    public Attended PerUnit { get; init; }

    /// <summary>
    /// How often the hands go over each unit, 1 to 100: coats of which each waits until the one before is recoatable. Set-up and put-away
    /// are paid in each pass. Coats that go on wet are one pass.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than 1 or more than 100.</exception>
    public int Passes
    {
        get => passes;
        init
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(value, 1);
            ArgumentOutOfRangeException.ThrowIfGreaterThan(value, MostPasses);
            passes = value;
        }
    }

    /// <summary>Hands busy once before a lot, in each pass.</summary>
    public Attended SetUp { get; init; }

    /// <summary>Hands busy once after a lot, in each pass, other than cleaning a spraying tool out between loads.</summary>
    public Attended PutAway { get; init; }

    /// <summary>Runs by itself after the hands are done with a pass, before anything else can be done to the unit.</summary>
    public Drying Unattended { get; init; }

    /// <summary>All units at once: in a bath, on one tray.</summary>
    public bool Together { get; init; }

    /// <summary>The tool it needs by its bench name, such as <c>airbrush</c>; null for what every painter has at hand.</summary>
    public string? Tool { get; init; }

    /// <summary>
    /// What else is taken out for it besides its tool, its paint and what its deeds name, as a painter calls it: <c>decal setter</c>,
    /// <c>curing lamp</c>. Not what always lies at hand: brushes, tweezers, a knife.
    /// </summary>
    public Sequence<string> Aids { get; init; }

    /// <summary>What the tool holds; null if it holds nothing.</summary>
    public Paint? Load { get; init; }

    /// <summary>How the tool is cleaned out before this step; <see cref="ToolCleaning.AsNeeded"/> unless the file says.</summary>
    public ToolCleaning CleanedOut { get; init; }

    /// <summary>In how many fillings of the tool the painter means to lay it on the whole lot; null for as many as it takes.</summary>
    public int? Loads { get; init; }

    /// <summary>True if each unit stands on the drying rack until its new layer is touch-dry.</summary>
    public bool NeedsDryingPlace { get; init; }

    /// <summary>
    /// The place or machine of the bench that each unit takes while it is worked on and runs by itself, by its bench name, such as
    /// <c>curing lamp</c>; a new layer is touch-dry before it comes out. Null for none, or for the drying rack.
    /// </summary>
    public string? StandsIn { get; init; }

    /// <summary>True if the file, not the verb, gives the attended time.</summary>
    public bool IsFromFile { get; init; }

    /// <summary>Hands busy with a lot in one pass, from its set-up to its put-away.</summary>
    /// <param name="units">How many units the lot has, at least 1.</param>
    public Attended PassOver(int units) => SetUp + (PerUnit * (Together ? 1 : units)) + PutAway;
}

/// <summary>A usual caution shown with a step. It never promises safety.</summary>
/// <param name="Name">In kebab case: <c>solvent-vapour</c>.</param>
/// <param name="Text">One or two sentences in the painter's words.</param>
public sealed record Caution(string Name, string Text);
