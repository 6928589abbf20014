namespace Pipeline.Abstractions;

/// <summary>What a layer is for.</summary>
public enum LayerRole
{
    /// <summary>Closes a porous material.</summary>
    Sealer,

    /// <summary>Gives key and an even ground.</summary>
    Undercoat,

    /// <summary>Colour, metallic or not.</summary>
    Colour,

    /// <summary>A thin effect: wash, filter, panel line, streak.</summary>
    Effect,

    /// <summary>Clear protection or a barrier.</summary>
    Varnish,

    /// <summary>Paste, sand, texture on a base.</summary>
    Texture,

    /// <summary>A decal.</summary>
    Decal,

    /// <summary>Loose pigment.</summary>
    Powder,

    /// <summary>Tufts, grass, leaves, snow.</summary>
    Scatter,
}

/// <summary>How colour is worked, where it matters to what may follow.</summary>
public enum Technique
{
    /// <summary>An ordinary coat.</summary>
    Plain,

    /// <summary>Sprayed light and shade before the colour.</summary>
    PreShade,

    /// <summary>Transparent colour over a bright ground.</summary>
    ClearColour,

    /// <summary>Lights and shades laid over each other.</summary>
    Layering,

    /// <summary>Thin transparent colour by brush.</summary>
    Glaze,

    /// <summary>All-over tint.</summary>
    Filter,

    /// <summary>All-over wash.</summary>
    Wash,

    /// <summary>Wash led into recesses.</summary>
    PinWash,

    /// <summary>Dark lines in panel joints, cleaned back.</summary>
    PanelLine,

    /// <summary>Almost dry brush over raised edges.</summary>
    DryBrush,

    /// <summary>Dabbed with a sponge.</summary>
    Sponge,

    /// <summary>Vertical grime, blended while workable.</summary>
    Streak,

    /// <summary>Stain that colours and shades in one.</summary>
    Stain,

    /// <summary>A medium that lets the coat over it be chipped away with water.</summary>
    ChippingMedium,
}

/// <summary>How thick one coat is.</summary>
public enum Body
{
    /// <summary>Dusted on, dry before it lands.</summary>
    Mist,

    /// <summary>A thin airbrushed coat.</summary>
    Thin,

    /// <summary>A brushed, wet or heavy coat.</summary>
    Heavy,
}

/// <summary>What one step left on one area.</summary>
public sealed record Layer
{
    /// <summary>Index in the route of the step that laid it.</summary>
    public required int Step { get; init; }

    /// <summary>What was laid; null where no paint is (a decal, texture).</summary>
    public Paint? Paint { get; init; }

    /// <summary>What it is called in messages: the paint's name, or <c>decal</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Its chemistry, or null where none applies (a decal, loose pigment).</summary>
    public Family? Family { get; init; }

    /// <summary>What it is for.</summary>
    public required LayerRole Role { get; init; }

    /// <summary>How it was worked.</summary>
    public Technique Technique { get; init; }

    /// <summary>How it was put on.</summary>
    public Method Method { get; init; }

    /// <summary>How thick each coat is.</summary>
    public Body Body { get; init; } = Body.Thin;

    /// <summary>How many coats, at least 1.</summary>
    public int Coats { get; init; } = 1;

    /// <summary>How it shines when dry.</summary>
    public Sheen Sheen { get; init; }

    /// <summary>Metal flakes.</summary>
    public bool IsMetallic { get; init; }

    /// <summary>Transparent.</summary>
    public bool IsClear { get; init; }

    /// <summary>Worked into the layer below while that is still open, because the painter says so.</summary>
    public bool IsWetInWet { get; init; }

    /// <summary>Meant to stain what lies under it, because the painter says so.</summary>
    public bool IsMeantToStain { get; init; }

    /// <summary>Times to each drying state, with what label and step say.</summary>
    public required DryingTable Drying { get; init; }

    /// <summary>True if label or step gave a time, so that messages can say which figures are defaults.</summary>
    public bool HasLabelTimes { get; init; }

    /// <summary>
    /// A layer of a paint, with the drying times that fit: an effect's for a thin effect, a heavy coat's for a heavy body,
    /// a thin coat's for the rest. Its step index is filled in by the walk.
    /// </summary>
    /// <param name="paint">What is laid.</param>
    /// <param name="role">What it is for.</param>
    /// <param name="method">How it is put on.</param>
    /// <param name="body">How thick each coat is; see <see cref="UsualBody"/>.</param>
    /// <param name="coats">How many coats, at least 1.</param>
    /// <param name="technique">How it is worked.</param>
    /// <exception cref="ArgumentOutOfRangeException">Less than one coat.</exception>
    public static Layer Of(Paint paint, LayerRole role, Method method, Body body, int coats = 1, Technique technique = Technique.Plain)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(coats, 1);
        return new Layer
        {
            Step = -1,
            Paint = paint,
            Name = paint.Name,
            Family = paint.Family,
            Role = role,
            Technique = technique,
            Method = method,
            Body = body,
            Coats = coats,
            Sheen = paint.Sheen,
            IsMetallic = paint.IsMetallic,
            IsClear = paint.IsClear,
            Drying = role == LayerRole.Effect ? paint.Effect : body == Body.Heavy ? paint.Heavy : paint.Thin,
            HasLabelTimes = paint.HasLabelTimes,
        };
    }

    /// <summary>How thick a coat usually is: an airbrush lays it thin, everything else heavy, a rattle can included.</summary>
    public static Body UsualBody(Method method) => method == Method.Airbrush ? Body.Thin : Body.Heavy;

    /// <summary>
    /// The time to a state at the standard climate. Three or more coats in one go take 1.5 times as long to become
    /// mask-safe and cured (common practice). Null if the state is not reached.
    /// </summary>
    public DryingRange? TimeTo(DryingState state) =>
        Drying.To(state) is not { } time ? null
        : Coats >= 3 && state is (DryingState.MaskSafe or DryingState.Cured) ? time * 1.5
        : time;
}
