using System.Text;
using Pipeline.Abstractions;

namespace Pipeline.Plugins;

/// <summary>A rule of the trade: named like its class, common practice unless it says which publication it rests on.</summary>
public abstract class TradeRule : Rule
{
    private string? name;

    /// <inheritdoc/>
    public sealed override string Name => name ??= RuleName.Of(GetType());

    /// <inheritdoc/>
    public override string Source => "common practice";
}

/// <summary>A rule of the trade about plans: named like its class, common practice unless it says which publication it rests on.</summary>
public abstract class TradePlanRule : PlanRule
{
    private string? name;

    /// <inheritdoc/>
    public sealed override string Name => name ??= RuleName.Of(GetType());

    /// <inheritdoc/>
    public override string Source => "common practice";
}

/// <summary>The name of a rule, that of its class.</summary>
internal static class RuleName
{
    /// <summary><c>MaskLeftOn</c> is <c>mask-left-on</c>.</summary>
    public static string Of(Type rule)
    {
        var className = rule.Name;
        var kebab = new StringBuilder();
        foreach (var letter in className)
        {
            if (char.IsUpper(letter) && kebab.Length > 0)
                kebab.Append('-');
            kebab.Append(char.ToLowerInvariant(letter));
        }

        return kebab.ToString();
    }
}
