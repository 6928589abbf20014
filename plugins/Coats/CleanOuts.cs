using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats;

/// <summary>Minutes to clean an airbrush out: the middle of each range the trade gives.</summary>
public sealed class CleanOuts : Catalogue<CleanOutTimes>
{
    /// <inheritdoc/>
    public override IEnumerable<CleanOutTimes> Entries =>
    [
        new CleanOutTimes(
            SameLoad: new Attended(0),
            LightToDark: new Attended(2),      // 1–3 min, same family
            DarkToLight: new Attended(5),      // 4–6 min, same family
            FamilyChange: new Attended(10),    // 8–12 min
            AfterMetallic: new Attended(12.5), // 10–15 min, stripped down
            EndOfSitting: new Attended(12.5),  // 10–15 min
            Source: "common practice")
        {
            Fill = new Attended(5), // of the 8 min set-up at a first load; the other 3 belong to each lot
        },
    ];
}
