using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Surfaces.Rules;

/// <summary>A rule is silenced where it has nothing to say.</summary>
public sealed class SilenceWithoutEffect : Rule
{
    /// <inheritdoc/>
    public override string Name => "silence-without-effect";

    /// <inheritdoc/>
    public override string Summary => "A rule is silenced only where it has something to say.";

    /// <inheritdoc/>
    public override string Source => "common practice";

    internal Finding About(Silence silence, Trade trade) => new()
    {
        Rule = Name,
        Level = Level.Note,
        Place = silence.Place,
        Message = IsKnown(silence.Rule, trade)
            ? $"'{silence.Rule}' is allowed here, but it has nothing to say."
            : $"'{silence.Rule}' is allowed here, but there is no rule of that name.",
        Remedy = "Take it out; a later mistake would hide behind it.",
    };

    private static bool IsKnown(string rule, Trade trade)
    {
        foreach (var brought in trade.Rules)
        {
            if (brought.Item.Name == rule)
                return true;
        }

        foreach (var own in Walk.OwnRules)
        {
            if (own.Item.Name == rule)
                return true;
        }

        return false;
    }
}
