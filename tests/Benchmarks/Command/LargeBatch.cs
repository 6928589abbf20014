using System.Globalization;
using System.Text;

namespace Pipeline.Benchmarks.Command;

/// <summary>A workflow file of many steps, written out without schemes.</summary>
internal static class LargeBatch
{
    private static readonly string[] Areas = ["hull", "deck", "mast", "sail"];

    /// <summary>A file with at least so many steps; the same each time.</summary>
    public static string Text(int steps)
    {
        var text = new StringBuilder(
            """
            batch: Harbour of a thousand boats
            bench:
              zone: Europe/Lisbon
              sittings:
                - { days: mon-sun, from: 08:00, to: 22:00 }
              painters: 2
              tools: { airbrush: 2 }
            paints:
              slate undercoat: { family: acrylic lacquer, sheen: matt, colour: "#4a4f55" }
              clear satin: { family: waterborne varnish, sheen: satin, clear: yes }

            """);
        for (var paint = 0; paint < 40; paint++)
            text.Append(CultureInfo.InvariantCulture, $"  colour {paint}: {{ family: waterborne acrylic, sheen: matt, colour: \"#{paint * 6:x2}{255 - (paint * 5):x2}7f\" }}\n");
        text.Append("kits:\n");
        var written = 0;
        for (var kit = 0; written < steps; kit++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  - kit: Quay {kit}\n    models:\n");
            for (var model = 0; model < 10 && written < steps; model++)
                written += Model(text, kit, model);
        }

        return text.ToString();
    }

    private static int Model(StringBuilder text, int kit, int model)
    {
        text.Append(CultureInfo.InvariantCulture, $"      - model: Boat {kit}-{model}\n        count: 1\n        material: resin\n");
        text.Append("        areas: { hull: 20 cm², deck: 12 cm², mast: 3 cm², sail: 9 cm² }\n        route:\n");
        text.Append("          - clean: all\n          - trim: all\n          - undercoat: all\n            with: slate undercoat\n            by: airbrush\n");
        var steps = 3;
        for (var coat = 0; coat < 24; coat++, steps++)
        {
            text.Append(CultureInfo.InvariantCulture, $"          - coat: {Areas[coat % 4]}\n            with: colour {((kit * 7) + model + coat) % 40}\n            by: brush\n");
        }

        text.Append("          - varnish: all\n            with: clear satin\n            by: airbrush\n          - photograph: all\n");
        return steps + 2;
    }
}
