namespace Pipeline.Tests.EndToEnd;

/// <summary>What is asked of a plan: why a step is when it is, why all of it is as long as it is, and what would get it done in time.</summary>
public sealed class WhyTests : IDisposable
{
    private static readonly string Crew = Bench.Workflow("tidewater.yaml");
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void A_step_by_its_name_shows_its_surfaces_and_when_it_is_planned()
    {
        bench.File("buoy.yaml", Files.Buoy);

        var ran = bench.Pipeline("why", "buoy.yaml", "undercoat", "--from", Files.Monday).ShowsNoTrace();

        ran.ExitCode.Should().Be(0, ran.Err);
        ran.Out.Should().Contain("buoy.yaml:18:13: undercoat body").And.Contain("Surfaces").And.Contain("When it is planned\n  Mon 30 Nov 1").And.Contain("held back: ").And.Contain("What it holds back");
        ran.Out.Split('\n').Should().OnlyContain(line => line.Length <= 80);
    }

    [Fact]
    public void A_line_alone_does_not_plan_but_does_with_a_start()
    {
        bench.File("buoy.yaml", Files.Buoy);

        bench.Pipeline("why", "buoy.yaml:18").Out.Should().NotContain("When it is planned");
        bench.Pipeline("why", "buoy.yaml:18", "--from", Files.Monday).Out.Should().Contain("When it is planned");
    }

    [Theory]
    [InlineData("undercoat", "undercoat oilskin, boots and stand")]
    [InlineData("Keeper: coat boots", "coat boots and stand")]
    [InlineData("oilskin yellow", "coat oilskin")]
    [InlineData("THE WET BOOT coat", "coat boots and stand")]
    [InlineData("photograph keeper", "photograph")]
    [InlineData("Keeper: clean all", "clean oilskin, boots and stand")]
    [InlineData("clean all areas", "clean oilskin, boots and stand")]
    [InlineData("coat the boots and the stand", "coat boots and stand")]
    public void A_step_is_found_as_a_painter_calls_it(string words, string found)
    {
        var ran = bench.Pipeline("why", Bench.Workflow("first.yaml"), words, "--from", Files.Monday, "--effort", "quick").ShowsNoTrace();

        ran.ExitCode.Should().Be(0, ran.Err);
        // the line breaks where the path is long
        string.Join(' ', ran.Out.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries)).Should().Contain($": {found}");
    }

    [Theory]
    [InlineData("Barge: wash hull", "wash plates and bands")]
    [InlineData("wash the hull", "wash plates and bands")]
    [InlineData("coat a hull", "coat plates and bands")]
    [InlineData("coat plates and bands", "coat plates and bands")]
    [InlineData("join hull, rig", "join plates, bands and mast")]
    public void A_part_stands_for_its_areas_as_in_the_file(string words, string found)
    {
        bench.File("barge.yaml", """
            batch: Barge
            bench:
              zone: Europe/Lisbon
              sittings: [{ days: mon-sun, from: 19:00, to: 22:00 }]
              tools: { airbrush: 1 }
            paints:
              pitch: { family: waterborne acrylic, sheen: satin, colour: "#202020" }
              slate: { family: acrylic lacquer, colour: "#4a4f55" }
            kits:
              - kit: Barge
                models:
                  - model: Barge
                    material: resin
                    parts:
                      hull: { areas: { plates: 20 cm², bands: 5 cm² } }
                      rig: { areas: { mast: 4 cm² } }
                    route:
                      - clean: all
                      - undercoat: all
                        with: slate
                        by: airbrush
                      - coat: hull
                        with: pitch
                        by: brush
                      - coat: rig
                        with: pitch
                        by: brush
                      - wash: hull
                        with: pitch
                      - join: [hull, rig]
            """);
        var ran = bench.Pipeline("why", "barge.yaml", words, "--from", Files.Monday, "--effort", "quick").ShowsNoTrace();

        ran.ExitCode.Should().Be(0, ran.Err);
        string.Join(' ', ran.Out.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries)).Should().Contain($": {found}");
    }

    [Theory]
    [InlineData("Line diver: unmsk discs", "Did you mean 'Line diver: unmask discs'?")]
    [InlineData("spnge jib", "Did you mean 'sponge jib'?")]
    [InlineData("juggle", "no step is called 'juggle'")]
    [InlineData("varnish", "'varnish' may be any of 13 steps: 'Line diver: varnish ")]
    [InlineData("", "no step is called ''")]
    public void A_name_no_step_goes_by_or_several_do_says_what_to_write(string words, string said)
    {
        var ran = bench.Pipeline("why", Crew, words).ShowsNoTrace();

        ran.ExitCode.Should().Be(2);
        ran.Out.Should().BeEmpty();
        ran.Err.Should().StartWith("pipeline: ").And.Contain(said).And.Contain("    do: ");
    }

    [Fact]
    public void A_step_of_a_scheme_is_shown_for_the_model_that_is_asked_for()
    {
        var ran = bench.Pipeline("why", Crew, "unmask discs", "--model", "Winch diver", "--from", Files.Monday, "--effort", "quick");

        ran.Out.Should().Contain("Winch diver, step");
        bench.Pipeline("why", Crew, "unmask discs", "--model", "Winch divers").Err.Should().Contain("Did you mean Winch diver?");
    }

    [Fact]
    public void What_cannot_be_planned_is_shown_all_the_same_with_why_not()
    {
        bench.File("buoy.yaml", Files.Hopeless);

        var ran = bench.Pipeline("why", "buoy.yaml", "undercoat", "--from", Files.Monday).ShowsNoTrace();

        ran.ExitCode.Should().Be(3);
        ran.Out.Should().Contain("Surfaces");
        ran.Err.Should().Contain("No plan");
    }

    [Fact]
    public void Why_it_is_late_says_the_chain_what_binds_the_slack_and_the_ways_out()
    {
        bench.File("buoy.yaml", Files.Buoy.Replace("batch: Buoy\n", "batch: Buoy\ndue: 2026-12-02 12:00\n").Replace("days: mon-sun", "days: [mon, thu]").Replace("count: 2", "count: 40"));

        var ran = bench.Pipeline("why", "buoy.yaml", "--late", "--from", Files.Monday, "--effort", "quick").ShowsNoTrace();

        ran.ExitCode.Should().Be(3);
        ran.Out.Should().MatchRegex("(?s)LATE.*THE CHAIN.*  1  Mon 30 Nov 18:00.*WHAT BINDS.*HOW MUCH COULD BE SAVED.*No plan can be ready before.*SLACK.*Buoy x40.*WAYS OUT.*  1  ");
        ran.Out.Should().Contain("more sitting");
        ran.Out.Split('\n').Should().OnlyContain(line => line.Length <= 80);
    }

    [Fact]
    public void Why_it_is_not_shorter_is_answered_in_time_too()
    {
        bench.File("buoy.yaml", Files.Buoy);

        var ran = bench.Pipeline("why", "buoy.yaml", "--late", "--from", Files.Monday);

        ran.ExitCode.Should().Be(0, ran.Err);
        ran.Out.Should().Contain("THE CHAIN").And.NotContain("WAYS OUT");
        bench.Pipeline("why", "buoy.yaml", "--late", "--model", "Boy", "--from", Files.Monday).Err.Should().Contain("there is no model 'Boy'").And.Contain("Buoy");
    }

    [Theory]
    [InlineData("why buoy.yaml", "'buoy.yaml' names no line")]
    [InlineData("why buoy.yaml undercoat --late", "leave STEP out")]
    [InlineData("why buoy.yaml --late --from soon", "--from does not understand 'soon'")]
    [InlineData("why nowhere.yaml --late", "cannot read nowhere.yaml: there is no such file")]
    public void A_call_that_cannot_be_used_says_what(string call, string said)
    {
        bench.File("buoy.yaml", Files.Buoy);

        var ran = bench.Pipeline(call.Split(' ')).ShowsNoTrace();

        ran.ExitCode.Should().Be(2);
        ran.Err.Should().Contain(said);
    }

    [Fact]
    public void A_late_plan_has_its_ways_out_in_every_form()
    {
        bench.File("buoy.yaml", Files.Buoy.Replace("batch: Buoy\n", "batch: Buoy\ndue: 2026-12-02 12:00\n").Replace("days: mon-sun", "days: [mon, thu]").Replace("count: 2", "count: 40"));

        bench.Pipeline("plan", "buoy.yaml", "--from", Files.Monday, "--effort", "quick", "--out", "week").ExitCode.Should().Be(3);
        string Written(string name) => File.ReadAllText(Path.Combine(bench.Folder, "week", name));

        Written("plan.txt").Should().Contain("WAYS OUT");
        Written("plan.md").Should().Contain("## Ways out");
        using var json = System.Text.Json.JsonDocument.Parse(Written("plan.json"));
        json.RootElement.GetProperty("waysOut").EnumerateArray().Select(way => way.GetProperty("change").GetString()).Should().Contain("more-sittings");
    }
}
