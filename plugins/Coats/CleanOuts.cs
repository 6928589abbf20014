using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats;

/// <summary>Minutes to clean an airbrush out.</summary>
public sealed class CleanOuts : Catalogue<CleanOutTime>
{
    /// <inheritdoc/>
    public override IEnumerable<CleanOutTime> Entries =>
    [
        Row(ToolChange.GetReady, 5, 5), // of the 8 min set-up at a first load; the other 3 belong to each lot
        Row(ToolChange.LightToDark, 1, 3),
        Row(ToolChange.DarkToLight, 4, 6),
        Row(ToolChange.FamilyChange, 8, 12),
        Row(ToolChange.AfterMetallic, 10, 15), // stripped down
        Row(ToolChange.EndOfSitting, 10, 15),
    ];

    private static CleanOutTime Row(ToolChange change, double low, double high) =>
        new(change, new Attended(low), new Attended(high), "common practice");
}
