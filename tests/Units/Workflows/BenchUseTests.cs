namespace Pipeline.Tests.Units.Workflows;

/// <summary>What is said where the steps and the bench, or one model and another, do not go together. Each line that ends in <c>#! …</c> must give that finding.</summary>
public class BenchUseTests
{
    [Fact]
    public void Places_and_tools_and_what_each_is_for() => Written.Finds("""
        batch: Crew
        bench:
          zone: Europe/Lisbon
          sittings: [{ days: mon-fri, from: 19:00, to: 22:00 }]
          tools: { airbrush: 1, drying rak: 4, ultrasonic tank: 2, spare lamp: 1 } #! uses no tool or place called ‘drying rak’. Did you mean ‘drying rack’?
        paints:
          hull black: { family: acrylic lacquer }
        kits:
          - kit: Divers
            models:
              - model: Diver
                material: resin
                areas: { suit: 30 cm² }
                route:
                  - clean: all
                    in: isopropyl #! ‘isopropyl’ is a liquid, and ‘in’ names a place at the bench. Write ‘with: isopropyl’
                  - clean: all
                    in: ultrasonic tank
                  - undercoat: all
                    with: hull black
                    by: airbrush
                    in: Airbrush #! No piece can stand in the airbrush: it is a tool that holds paint. Name a place
        """, trade: Check.Trade);

    [Theory]
    [InlineData("a day without a sitting", "[]", "{ painter: Rui, days: sun } #! Rui never sits at the bench: there is no sitting on any of these days.")]
    [InlineData("a weekday with one", "[]", "{ painter: Rui, days: [sun, wed] }")]
    [InlineData("a date with one", "[]", "{ painter: Rui, days: 2026-12-04 }")]
    [InlineData("a Saturday", "[]", "{ painter: Rui, days: 2026-12-05 } #! Rui never sits at the bench")]
    [InlineData("a Saturday that is extra", "[{ date: 2026-12-05, from: 10:00, to: 12:00 }]", "{ painter: Rui, days: 2026-12-05 }")]
    [InlineData("all of whose Saturdays are extra", "[{ date: 2026-12-05, from: 10:00, to: 12:00 }]", "{ painter: Rui, days: sat }")]
    [InlineData("a date on which nobody sits", "[]", "{ painter: Rui, days: 2026-12-08 } #! Rui never sits at the bench")]
    public void Who_never_comes_while_the_bench_is_open(string on, string extra, string painter)
    {
        Written.Finds($$"""
            batch: Crew
            bench:
              zone: Europe/Lisbon
              sittings: [{ days: mon-fri, from: 19:00, to: 22:00 }]
              extra: {{extra}}
              away: 2026-12-08
              painters:
                - Ana
                - {{painter}}
            kits:
              - kit: Divers
                models:
                  - model: Diver
                    material: resin
                    areas: { suit: 30 cm² }
                    route:
                      - clean: all
            """.Replace("  extra: []\n", "", StringComparison.Ordinal), because: on);
    }

    [Fact]
    public void A_step_comes_only_after_steps_of_its_own_model() => Written.Finds("""
        batch: Crew
        bench: { zone: Europe/Lisbon, sittings: [{ days: mon-fri, from: 19:00, to: 22:00 }] }
        kits:
          - kit: Pawns
            models:
              - model: White pawn
                material: resin
                areas: { body: 12 cm² }
                route:
                  - clean: all
                    as: white clean
                  - clean: all
                    after: black wash #! The step ‘black wash’ is one of Black pawn; ‘after’ reaches only steps of the same model.
              - model: Black pawn
                material: resin
                areas: { body: 12 cm² }
                route:
                  - clean: all
                    after: white clean #! The step ‘white clean’ is one of White pawn; ‘after’ reaches only steps of the same model.
                  - clean: all
                    as: black wash
                    after: white cleen #! There is no step called ‘white cleen’.
        """);
}
