using System.Text.Json.Nodes;

namespace Pipeline.Workflows;

/// <summary>A table of the trade that a file may say otherwise: its key at the top of the file, the keys of its rows, and how they are read.</summary>
/// <param name="Key">The key at the top of the file.</param>
/// <param name="Says">How a row is written, for the workflow reference.</param>
/// <param name="Keys">Keys of a row.</param>
/// <param name="Bind">Reads what one file says.</param>
/// <param name="Value">The schema of what stands at the key.</param>
internal sealed record TableForm(
    Key Key, string Says, Key[] Keys, Action<Desk, Shelf, SyntaxNode, GivenOnce> Bind, Func<Shelf, JsonNode> Value)
{
    /// <summary>The tables besides the families, in the order of the reference.</summary>
    public static readonly TableForm[] All =
    [
        CompatibilityBinder.Form,
        RewettingBinder.Form,
        MaskMaterialBinder.Form,
        MaterialBinder.Form,
        CleanOutBinder.Form,
        ThinnerBinder.Form,
        SettingBinder.Form,
        FigureBinder.Form,
    ];

    /// <summary>The table of a top key, or null.</summary>
    public static TableForm? Named(string key)
    {
        foreach (var table in All)
        {
            if (table.Key.Name == key)
                return table;
        }

        return null;
    }
}

/// <summary>Sees to it that nothing is given twice, in one file or in several, under whichever of its names.</summary>
internal sealed class GivenOnce(Desk desk)
{
    private readonly Dictionary<string, TextNode> given = new(StringComparer.Ordinal);

    /// <summary>True the first time; else a finding with both places.</summary>
    public bool Note(TextNode key, string what, string name)
    {
        if (given.TryAdd(name, key))
            return true;
        desk.Error(key, $"{what} is given twice.", "Keep one of the two.", new Abstractions.Related(given[name].Place, "first given here"));
        return false;
    }
}
