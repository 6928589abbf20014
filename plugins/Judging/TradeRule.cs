using System.Text;
using Pipeline.Abstractions;

namespace Pipeline.Plugins;

/// <summary>A rule of the trade: named like its class, common practice unless it says which publication it rests on.</summary>
public abstract class TradeRule : Rule
{
    private string? name;

    /// <inheritdoc/>
    public sealed override string Name => name ??= Kebab(GetType().Name);

    /// <inheritdoc/>
    public override string Source => "common practice";

    private static string Kebab(string className)
    {
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
