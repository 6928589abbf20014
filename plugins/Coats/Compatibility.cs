using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats;

/// <summary>
/// New coat over existing. A cell says how it may go on a coat that is dry, with the state that coat must have reached where recoatable is not
/// enough, and how on one that has cured. Enamels and oils have a row for their coats and one for their thin effects. Of enamel over enamel
/// the published recoat window speaks: within the hour or after it has dried through.
/// </summary>
public sealed class Compatibility : Catalogue<CoatOver>
{
    private const string CommonPractice = "common practice";

    private const string Gently = "gently: a stiff brush drags the flakes";

    private const string OnePass = "in one pass while the stain has not cured: brushing back and forth re-wets it";

    private const string Table = """
        new coat                               | waterborne acrylic, waterborne varnish | acrylic lacquer, cellulose lacquer, lacquer varnish | enamel            | oil               | alcohol metallic  | stain
        waterborne acrylic, waterborne varnish | fine / fine                  | fine / fine                | never / scuff     | never / barrier   | fine / fine       | fine / fine
        acrylic lacquer, cellulose lacquer, lacquer varnish | mist from mask-safe / mist | fine / fine    | never / mist      | never / barrier   | mist / mist       | mist from mask-safe / mist
        enamel                                 | fine from wash-safe / fine   | fine from wash-safe / fine | fine / scuff      | never / barrier   | barrier / barrier | fine from wash-safe / fine
        enamel effect                          | fine from wash-safe / fine   | fine from wash-safe / fine | barrier / barrier | barrier / barrier | barrier / barrier | fine from wash-safe / fine
        oil                                    | fine from wash-safe / fine   | fine / fine                | barrier / barrier | fine / fine       | barrier / barrier | fine from wash-safe / fine
        oil effect                             | fine from wash-safe / fine   | fine from wash-safe / fine | barrier / barrier | barrier / barrier | barrier / barrier | fine from wash-safe / fine
        alcohol metallic                       | mist / mist                  | fine / fine                | never / mist      | never / barrier   | mist / mist       | never / mist
        stain                                  | fine / fine                  | fine / fine                | never / scuff     | never / barrier   | barrier / barrier | fine / fine
        """;

    private static readonly (string Coat, string Over, string Note)[] Notes =
    [
        ("waterborne acrylic", "alcohol metallic", Gently),
        ("waterborne varnish", "alcohol metallic", Gently),
        ("waterborne acrylic", "stain", OnePass),
        ("waterborne varnish", "stain", OnePass),
        ("enamel effect", "stain", "a barrier is better until the stain has cured"),
        ("oil effect", "stain", "a barrier is better until the stain has cured"),
        ("oil", "oil", "or wet-in-wet while it is open"),
        ("oil effect", "oil", "or wet-in-wet while it is open"),
        ("stain", "stain", "re-wets it while it has not cured"),
        ("enamel", "enamel", "within the hour, or once it has dried through"),
    ];

    /// <inheritdoc/>
    public override IEnumerable<CoatOver> Entries
    {
        get
        {
            var lines = Table.Split('\n').Select(line => line.Split('|').Select(cell => cell.Trim()).ToArray()).ToList();
            foreach (var line in lines.Skip(1))
            {
                foreach (var coat in line[0].Split(", "))
                {
                    for (var column = 1; column < line.Length; column++)
                    {
                        foreach (var over in lines[0][column].Split(", "))
                            yield return Row(coat, over, line[column]);
                    }
                }
            }
        }
    }

    private static CoatOver Row(string coat, string over, string cell)
    {
        const string Effect = " effect";
        var (dry, cured) = (cell.Split(" / ")[0], cell.Split(" / ")[1]);
        var from = dry.IndexOf(" from ", StringComparison.Ordinal);
        var asEffect = coat.EndsWith(Effect, StringComparison.Ordinal);
        return new CoatOver
        {
            Coat = asEffect ? coat[..^Effect.Length] : coat,
            AsEffect = asEffect,
            Over = over,
            WhenDry = Enum.Parse<Bearing>(from < 0 ? dry : dry[..from], ignoreCase: true),
            From = from < 0 ? DryingState.Recoatable : Enum.Parse<DryingState>(dry[(from + 6)..].Replace("-", "", StringComparison.Ordinal), ignoreCase: true),
            WhenCured = Enum.Parse<Bearing>(cured, ignoreCase: true),
            Note = Array.Find(Notes, note => note.Coat == coat && note.Over == over).Note ?? "",
            Source = SourceOf(coat, over),
        };
    }

    private static string SourceOf(string coat, string over) => (coat, over) switch
    {
        ("acrylic lacquer" or "cellulose lacquer" or "lacquer varnish", "enamel") =>
            CommonPractice + "; that strong solvent lifts enamel that has not cured is published in a refinishing guide on lifting",
        ("enamel", "enamel") => CommonPractice + "; the recoat window published in a refinishing guide on lifting",
        _ => CommonPractice,
    };
}
