namespace Pipeline.Tests.Units;

/// <summary>
/// The bench and the shelf around a fragment that gives only a model: <c>material</c>, <c>areas</c>, <c>route</c> and the like.
/// All paints are invented. <c>docs/rules/README.md</c> prints it for readers of the pages.
/// </summary>
internal static class Prelude
{
    /// <summary>The first lines of every such file.</summary>
    public const string Text = """
        batch: Example
        bench:
          zone: Europe/Lisbon
          sittings: [{ days: mon-sun, from: 08:00, to: 23:00 }]
        paints:
          slate undercoat:   { family: acrylic lacquer, sheen: matt, colour: "#4a4f55" }
          water undercoat:   { family: waterborne acrylic, sheen: matt, colour: "#555a60" }
          breakwater sealer: { family: cellulose lacquer, sheen: satin, clear: yes }
          derrick yellow:    { family: waterborne acrylic, sheen: satin, colour: "#d8a11c" }
          gloss teal:        { family: waterborne acrylic, sheen: gloss, colour: "#2a6a6c" }
          girder grey:       { family: waterborne acrylic, sheen: matt, colour: "#6f767c" }
          chalk white:       { family: waterborne acrylic, sheen: matt, colour: "#eeece4" }
          harbour black:     { family: acrylic lacquer, sheen: gloss, colour: "#0c0d10" }
          lantern red:       { family: cellulose lacquer, sheen: satin, colour: "#a02018" }
          hull green:        { family: enamel, sheen: satin, colour: "#2f4a38" }
          tar:               { family: oil, sheen: satin, colour: "#231a14" }
          bilge ink:         { family: stain, sheen: satin, colour: "#20343a" }
          bellfounder brass: { family: alcohol metallic, sheen: gloss, metallic: yes, colour: "#b58b3b" }
          bright steel:      { family: acrylic lacquer, sheen: gloss, metallic: yes, colour: "#b8bcc0" }
          dull iron:         { family: acrylic lacquer, sheen: matt, metallic: yes, colour: "#3c3d40" }
          whisky glass:      { family: acrylic lacquer, sheen: gloss, clear: yes, colour: "#c98a2b" }
          rust shade:        { family: waterborne acrylic, sheen: matt, colour: "#6a3a1c" }
          bilge wash:        { family: enamel, sheen: matt, colour: "#3a2c20" }
          kelp streak:       { family: enamel, sheen: matt, colour: "#3f4a2c" }
          tar wash:          { family: oil, sheen: satin, colour: "#2a2018" }
          worn-off medium:   { family: waterborne acrylic, sheen: satin, clear: yes }
          clear w gloss:     { family: waterborne varnish, sheen: gloss, clear: yes }
          clear w satin:     { family: waterborne varnish, sheen: satin, clear: yes }
          clear w matt:      { family: waterborne varnish, sheen: matt, clear: yes }
          clear l gloss:     { family: lacquer varnish, sheen: gloss, clear: yes }
          clear l matt:      { family: lacquer varnish, sheen: matt, clear: yes }
        kits:
          - kit: Example
            models:
              - model: Example

        """;

    private const int ModelIndent = 8;

    /// <summary>A whole file around a fragment; a fragment that is a whole file stays as it is.</summary>
    public static string Around(string fragment) =>
        fragment.Contains("kits:", StringComparison.Ordinal)
            ? fragment
            : Text + string.Join('\n', fragment.Split('\n').Select(line => line.Length == 0 ? line : new string(' ', ModelIndent) + line));
}
