using NodaTime;
using NodaTime.Text;
using Pipeline.Abstractions;
using Pipeline.Planning;
using Pipeline.Surfaces;
using Pipeline.Tests.Units.Plugins;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Planning;

/// <summary>A bench and its models, made by hand and walked for real; the drying times are the plugins'.</summary>
internal sealed class Workshop
{
    public static readonly Place BenchPlace = new("harbour.yaml", 3, 1);

    private readonly List<WeeklySitting> weekly = [];
    private readonly List<DatedSitting> dated = [];
    private readonly List<AwayDays> away = [];
    private readonly List<Painter> painters = [];
    private readonly List<BenchTool> tools = [];
    private readonly List<Route> routes = [];
    private readonly List<Paint> paints = [];
    private readonly string zone;
    private BenchClimate climate = BenchClimate.Standard;
    private Attended? mostPerDay;
    private Share slack;
    private Pace pace;
    private Sequence<BatchAim> aims = [BatchAim.FinishSoon, BatchAim.FewChanges, BatchAim.ShortMasks, BatchAim.EvenDays];

    private Workshop(string zone) => this.zone = zone;

    public static Workshop In(string zone = "Europe/Lisbon") => new(zone);

    /// <summary>Weekday evenings from 19:00 to 22:00.</summary>
    public static Workshop Evenings() => In().Weekly("Mon Tue Wed Thu Fri", "19:00", "22:00");

    public Workshop Weekly(string days, string from, string to) =>
        With(() => weekly.Add(new WeeklySitting([.. days.Split(' ').Select(Day)], Time(from), Time(to), BenchPlace)));

    public Workshop On(string date, string from, string to) => With(() => dated.Add(new DatedSitting(Date(date), Time(from), Time(to), BenchPlace)));

    public Workshop Away(string first, string last) => With(() => away.Add(new AwayDays(Date(first), Date(last))));

    public Workshop Painter(string name, params string[] does) => With(() => painters.Add(new Painter(name, does.ToSequence())));

    /// <summary>A painter who comes on a weekday or a date only.</summary>
    public Workshop PainterOn(string day, string name) => With(() => painters.Add(day.Length == 3
        ? new Painter(name, []) { Weekdays = [Day(day)] }
        : new Painter(name, []) { Dates = [Date(day)] }));

    public Workshop Tool(string name, int count) => With(() => tools.Add(new BenchTool(name, count)));

    public Workshop MostPerDay(double minutes) => With(() => mostPerDay = new Attended(minutes));

    /// <summary>How many percent of each sitting stay free; here none unless said, so that cases can be reckoned by hand.</summary>
    public Workshop Slack(double percent) => With(() => slack = new Share(percent / 100));

    public Workshop Air(double degrees, double humidity, double? nightDegrees = null, double? nightHumidity = null) => With(() => climate = new BenchClimate(
        new Climate(new Temperature(degrees), new Share(humidity / 100)),
        new Climate(new Temperature(nightDegrees ?? degrees), new Share((nightHumidity ?? humidity) / 100))));

    /// <summary>What is best, most important first.</summary>
    public Workshop Aim(params BatchAim[] order) => With(() => aims = order.ToSequence());

    public Workshop Brisk() => With(() => pace = Pace.Brisk);

    public Workshop Model(string name, int count, Action<RouteSteps> route, string? due = null, string areas = "suit boots", double weight = 1)
    {
        var steps = new RouteSteps(name, count, areas.Split(' '), 100 * (routes.Count + 1));
        route(steps);
        paints.AddRange(steps.Paints.Where(paint => paints.All(known => known.Name != paint.Name)));
        routes.Add(steps.Route(due is null ? null : new Due(Moment(due), new Place("harbour.yaml", 2, 6)), weight));
        return this;
    }

    public Walked Walked(params Rule[] rules)
    {
        var bench = Bench;
        var batch = new Batch
        {
            Tables = AllPlugins.Tables,
            Name = "Harbour",
            Files = ["harbour.yaml"],
            Bench = bench,
            Paints = paints.ToSequence(),
            Kits = [new Kit("Harbour", BenchPlace, routes.ToSequence())],
            Pace = pace,
            Aims = aims,
        };
        return Walk.Run(batch, Trade(rules));
    }

    public Pipeline.Workflows.Bench Bench => new()
    {
        Zone = DateTimeZoneProviders.Tzdb[zone],
        Weekly = weekly.ToSequence(),
        Dated = dated.ToSequence(),
        Away = away.ToSequence(),
        Painters = painters.Count == 0 ? [new Painter("painter 1", [])] : painters.ToSequence(),
        Tools = tools.ToSequence(),
        Climate = climate,
        MostPerDay = mostPerDay,
        Slack = slack,
        Place = BenchPlace,
    };

    public PlanOutcome Outcome(string from = "2026-11-30 18:00", SearchEffort effort = SearchEffort.Quick) =>
        Planner.Plan(Walked(), Trade([]), new PlanRequest(At(from), effort));

    public Plan Plan(string from = "2026-11-30 18:00") =>
        Outcome(from) is PlanOutcome.Planned planned ? planned.Plan : throw new InvalidOperationException(
            "No plan: " + string.Join("; ", ((PlanOutcome.NoPlan)Outcome(from)).Reasons.Select(f => f.Message)));

    public Finding NoPlan(string from = "2026-11-30 18:00") => ((PlanOutcome.NoPlan)Outcome(from)).Reasons.Single();

    public Instant At(string moment) => Moment(moment).InZoneLeniently(DateTimeZoneProviders.Tzdb[zone]).ToInstant();

    public static Trade Trade(Rule[] rules) => new()
    {
        Rules = [.. rules.Append(new UsualWaits()).Concat(Check.Rules.OfType<PlanRule>()).Select(rule => new Brought<Rule>("Harbour", rule))],
    };

    public static LocalDateTime Moment(string moment) => LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm").Parse(moment).Value;

    private Workshop With(Action change)
    {
        change();
        return this;
    }

    private static LocalDate Date(string date) => LocalDatePattern.Iso.Parse(date).Value;

    private static LocalTime Time(string time) => LocalTimePattern.CreateWithInvariantCulture("HH:mm").Parse(time).Value;

    private static IsoDayOfWeek Day(string day) =>
        Enum.GetValues<IsoDayOfWeek>().Single(known => known.ToString().StartsWith(day, StringComparison.Ordinal));
}
