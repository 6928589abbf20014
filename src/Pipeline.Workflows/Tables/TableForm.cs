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
