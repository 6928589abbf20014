namespace Pipeline.Tests.EndToEnd;

/// <summary>Workflow files for tests.</summary>
internal static class Files
{
    /// <summary>A file in which nothing is wrong.</summary>
    public const string Buoy =
        """
        batch: Buoy
        bench:
          zone: Europe/Lisbon
          sittings:
            - { days: mon-sun, from: 18:00, to: 21:00 }
        paints:
          slate undercoat: { family: acrylic lacquer, sheen: matt, colour: "#4a4f55" }
        kits:
          - kit: Buoys
            models:
              - model: Buoy
                count: 2
                material: resin
                areas: { body: 9 cm² }
                route:
                  - clean: all
                  - trim: all
                  - undercoat: all
                    with: slate undercoat
                    by: airbrush
        """;

    /// <summary>The same, due before it can be ready.</summary>
    public static string Late => Buoy.Replace("batch: Buoy\n", "batch: Buoy\ndue: 2026-11-30 18:01\n");

    /// <summary>The same without a sitting in which a step finds room.</summary>
    public static string Hopeless => Buoy.Replace("to: 21:00", "to: 18:02");

    /// <summary>The same with a paint nobody knows.</summary>
    public static string Wrong => Buoy.Replace("with: slate undercoat", "with: slate undercoats");

    /// <summary>The Monday from which tests plan.</summary>
    public const string Monday = "2026-11-30 18:00";
}
