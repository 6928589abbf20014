using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Engine;
using Pipeline.Planning;
using Pipeline.Reports;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Planning;

/// <summary>A plan on the wall and what comes after it, through its JSON as a painter keeps it. Times are Lisbon's in winter, which are UTC's.</summary>
internal sealed class Wall
{
    private readonly string yaml;

    private Wall(string yaml, Plan plan) => (this.yaml, Plan) = (yaml, plan);

    public Plan Plan { get; }

    public IReadOnlyList<PlannedTask> Tasks => [.. Plan.Days.SelectMany(day => day.Sittings).SelectMany(sitting => sitting.Tasks).Where(task => task.Sort == TaskSort.Step)];

    /// <summary>A batch planned from Monday 30 November 2026, 18:00.</summary>
    public static Wall Of(string yaml) => new(yaml, Planned(yaml, new PlanRequest(At("2026-11-30 18:00"), SearchEffort.Quick)));

    /// <summary>A batch with its evenings, paints and models: a bench, then <c>model xN: route</c>.</summary>
    public static Wall Of(string bench, string models) => Of(Batch(bench, models));

    /// <summary>What is left, planned with what had ended by then taken as done.</summary>
    /// <param name="done">By then.</param>
    /// <param name="from">From when it is planned; that time if left out.</param>
    /// <param name="change">What has changed in the file: what it said, and what it says.</param>
    public Wall After(string done, string? from = null, params (string Was, string Is)[] change)
    {
        var now = Changed(change);
        return new Wall(now, Planned(now, Asked(done, from)));
    }

    /// <summary>Why there is no plan of what is left.</summary>
    public Sequence<Finding> NoneAfter(string done, params (string Was, string Is)[] change) =>
        Outcome(Changed(change), Asked(done, null)).Should().BeOfType<PlanOutcome.NoPlan>().Which.Reasons;

    /// <summary>The first task whose words begin so.</summary>
    public PlannedTask Task(string words, string? model = null) =>
        Tasks.FirstOrDefault(task => task.Words.StartsWith(words, StringComparison.Ordinal) && (model is null || task.Model == model))
        ?? throw new InvalidOperationException($"No '{words}' among: {string.Join("; ", Tasks.Select(task => task.Words))}");

    /// <summary>When that task begins: <c>Mon 19:05</c>.</summary>
    public string Begins(string words, string? model = null) => Said(Task(words, model).From);

    public static string Said(ZonedDateTime moment) => moment.ToString("ddd HH:mm", System.Globalization.CultureInfo.InvariantCulture);

    public static Instant At(string moment) => Workshop.Moment(moment).InUtc().ToInstant();

    public static string Batch(string bench, string models) => $$"""
        batch: Boats
        bench:
          zone: Europe/Lisbon
        {{Indented(bench, 2)}}
        paints:
          slate undercoat: { family: acrylic lacquer, sheen: matt, colour: "#4a4f55" }
          chalk ground: { family: acrylic lacquer, sheen: matt, colour: "#eeece4" }
          hull yellow: { family: enamel, sheen: satin, colour: "#d8a11c" }
          wet boot: { family: waterborne acrylic, sheen: matt, colour: "#2b2a28" }
          sea boot: { family: waterborne acrylic, sheen: matt, colour: "#2b4a58" }
        kits:
          - kit: Example
            models:
        {{Indented(models, 6)}}
        """;

    private static string Indented(string text, int by) => string.Join('\n', text.TrimEnd().Split('\n').Select(line => new string(' ', by) + line));

    private string Changed((string Was, string Is)[] change)
    {
        var now = yaml;
        foreach (var (was, isNow) in change)
        {
            now.Should().Contain(was);
            now = now.Replace(was, isNow, StringComparison.Ordinal);
        }

        return now;
    }

    private PlanRequest Asked(string done, string? from)
    {
        var (read, wrong) = PlanJsonReading.Read(System.Text.Encoding.UTF8.GetBytes(PlanJson.Render(Plan)));
        wrong.Should().BeNull();
        return new PlanRequest(At(from ?? done), SearchEffort.Quick, Keep: read! with { Name = "one.json" }, Done: At(done));
    }

    private static Plan Planned(string yaml, PlanRequest request)
    {
        var outcome = Outcome(yaml, request);
        return outcome is PlanOutcome.Planned planned ? planned.Plan
            : throw new InvalidOperationException("No plan: " + string.Join("; ", ((PlanOutcome.NoPlan)outcome).Reasons.Select(finding => finding.Message)));
    }

    private static PlanOutcome Outcome(string yaml, PlanRequest request)
    {
        var done = Stages.Check([new SourceText("case.yaml", yaml)], Check.Trade);
        done.Walked.Should().NotBeNull(Check.Told(done.Findings));
        return Planner.Plan(done.Walked!, Check.Trade, request);
    }
}
