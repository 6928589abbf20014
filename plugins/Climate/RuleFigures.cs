using Pipeline.Abstractions;

namespace Pipeline.Plugins.Climate;

/// <summary>What the rules about air go by.</summary>
public sealed class RuleFigures : Catalogue<Figure>
{
    /// <summary>How much warmer than the dew point.</summary>
    public const string DewPointMargin = "dew point margin";

    /// <summary>How much damper than borne is an error.</summary>
    public const string FarTooDamp = "far too damp";

    /// <summary>How much colder than the bench sweats.</summary>
    public const string Colder = "cold from outside";

    /// <summary>How long it stands at the bench first.</summary>
    public const string WarmingUp = "warming up";

    /// <inheritdoc/>
    public override IEnumerable<Figure> Entries =>
    [
        new()
        {
            Name = DewPointMargin,
            Value = 3,
            Unit = FigureUnit.Degrees,
            Means = "how much warmer than the dew point pieces are when a coat goes on",
            Source = "common practice; the margin that coating inspection attaches to ISO 8502-4 (standard text not seen)",
        },
        new() { Name = FarTooDamp, Value = 10, Unit = FigureUnit.Percent, Means = "air so much damper than a paint bears is an error, less a warning", Source = CommonPractice },
        new() { Name = Colder, Value = 5, Unit = FigureUnit.Degrees, Means = "pieces and paint so much colder than the bench sweat", Source = CommonPractice },
        new() { Name = WarmingUp, Value = 120, Unit = FigureUnit.Minutes, Means = "how long they stand at the bench first", Source = CommonPractice },
    ];

    private const string CommonPractice = "common practice";
}
