using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Engine;
using Pipeline.Planning;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Planning;

/// <summary>From a route in the file to the tasks of the plan, with the plugins of the house. From Monday 30 November, 18:00.</summary>
public class PlanWordsTests
{
    private const string Ground = """
        - clean: all
        - undercoat: all
          with: slate
          by: airbrush

        """;

    [Fact]
    public void A_dry_brush_leaves_no_mist()
    {
        var words = Tasks(Ground + """
            - dry-brush: all
              with: bone
            - varnish: all
              with: clear
              by: airbrush
              body: mist
            """).Select(task => task.Words).ToList();

        words.Should().Contain("Dry-brush all areas with bone").And.Contain("Airbrush clear on all areas, as a mist");
    }

    [Theory]
    [InlineData("trim: all")]
    [InlineData("drill: all")]
    [InlineData("sand: all")]
    public void What_is_worked_wet_dries_before_the_undercoat(string work)
    {
        var tasks = Tasks($"""
            - {work}
              wet: yes
            - undercoat: all
              with: slate
              by: airbrush
            """);

        var wait = tasks[0].Starts.Should().ContainSingle().Subject;
        wait.For.Should().Be("dry");
        tasks[1].From.ToInstant().Should().BeGreaterThanOrEqualTo(wait.Earliest.ToInstant());
        (tasks[1].From - tasks[0].To).TotalMinutes.Should().BeGreaterThan(60);
    }

    [Theory]
    [InlineData("", true)]
    [InlineData("  wet-in-wet: yes\n", false)]
    public void A_pin_wash_waits_for_the_filter_unless_it_is_meant_to_run_into_it(string key, bool waits)
    {
        var tasks = Tasks(Ground + $"""
            - varnish: all
              with: clear
              by: airbrush
            - filter: all
              with: dust
            - wash: all
              with: bilge
              pin: yes
            {key}
            """);

        var (filter, wash) = (tasks.Single(task => task.Verb == "filter"), tasks.Single(task => task.Verb == "wash"));
        (wash.From - filter.To).TotalHours.Should().BeInRange(waits ? 20 : 0, waits ? 30 : 1);
    }

    private static List<PlannedTask> Tasks(string route)
    {
        var walked = Stages.Check([Text(route)], Check.Trade).Walked;
        walked!.Findings.Where(finding => finding.Level == Level.Error).Should().BeEmpty();
        var plan = Planner.Plan(walked, Check.Trade, new PlanRequest(Instant.FromUtc(2026, 11, 30, 18, 0), SearchEffort.Quick)).Should().BeOfType<PlanOutcome.Planned>().Which.Plan;
        return [.. plan.Days.SelectMany(day => day.Sittings).SelectMany(sitting => sitting.Tasks).Where(task => task.Sort != TaskSort.CloseDown)];
    }

    private static SourceText Text(string route) => new("hull.yaml", $$"""
        batch: Hull
        bench: { zone: Europe/Lisbon, sittings: [{ days: mon-sun, from: 18:00, to: 23:00 }], tools: { airbrush: 1 } }
        paints:
          slate: { family: acrylic lacquer, colour: "#4a4f55" }
          bone: { family: waterborne acrylic, colour: "#cfc8b4" }
          clear: { family: lacquer varnish, sheen: gloss, clear: yes }
          dust: { family: enamel, colour: "#b0a080" }
          bilge: { family: enamel, colour: "#3a2c20" }
        kits:
          - kit: Hull
            models:
              - model: Hull
                material: styrene
                areas: { plates: 20 cm², deck: 6 cm² }
                route:
        {{string.Join('\n', route.TrimEnd().Split('\n').Select(line => $"          {line}"))}}
        """);
}
