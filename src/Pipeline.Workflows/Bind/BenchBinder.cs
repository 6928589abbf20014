using NodaTime;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads <c>bench</c>: where, when, who, with what, and in what air.</summary>
internal sealed class BenchBinder(Desk desk, Shelf shelf)
{
    private const int MostPainters = 20;
    private const int MostTools = 1_000;

    // less than what stays in the cup at each load sprays nothing
    private const double LeastCup = PaintNeed.DeadLossMillilitres;

    /// <summary>Keys of a bench.</summary>
    public static readonly Key[] Keys =
    [
        new("zone", "the time zone the file's times are in, by its IANA name", Needed: true, "Europe/Lisbon"),
        new("sittings", "stretches of time at the bench, by weekday or by date", Needed: true, "[{ days: mon-fri, from: 19:00, to: 22:00 }]"),
        new("extra", "sittings on single dates besides those", Needed: false, "[{ date: 2026-12-05, from: 10:00, to: 13:00 }]"),
        new("away", "dates on which nobody sits at the bench, whatever the other lists say", Needed: false, "[2026-12-08, 2026-12-20..2026-12-26]"),
        new("painters", "how many, or their names, or their names with the verbs each does and the days each comes", Needed: false, "[Ana, { painter: Rui, does: [coat, varnish], days: sat }]", "1"),
        new("tools", "tools and places with their number; of a place, how many pieces it holds, each counted once however many of its areas are wet", Needed: false, "{ airbrush: 1, drying rack: 24 }"),
        new("climate", "the air over the bench, all day or by day and by night", Needed: false, "{ air: 19 °C, humidity: 55 % }", "21 °C and 50 %"),
        new("cup", "what the airbrush's cup holds, 0.5 mL or more", Needed: false, "7 mL"),
        new("protection", "what protects you there", Needed: false, "{ extraction: yes, respirator: yes, gloves: yes }", "not said"),
        new("slack", "the share at the end of each sitting that a plan leaves free for what takes longer", Needed: false, "10 %", "15 %"),
        new("most-per-day", "most attended time in one day for one painter, in all its sittings together; a sitting past midnight belongs to the day on which it begins", Needed: false, "3 h"),
    ];

    /// <summary>Keys of a painter who does not do everything, or does not come every day.</summary>
    public static readonly Key[] PainterKeys =
    [
        new("painter", "a name", Needed: true, "Rui"),
        new("does", "the verbs this painter may do", Needed: false, "[coat, varnish]", "all"),
        new("days", "the weekdays and dates on which this painter comes, in the bench's sittings", Needed: false, "[sat, 2026-12-08]", "whenever the bench is open"),
    ];

    private readonly List<(SyntaxNode Node, Painter Painter)> onSomeDays = [];

    /// <summary>The tools as the files name them, each where it is first named.</summary>
    public List<TextNode> ToolNames { get; } = [];

    public Bench? Bind(TextNode key, SyntaxNode node)
    {
        if (desk.Mapping(node, "the zone and the sittings at least") is not { } mapping)
            return null;
        onSomeDays.Clear();
        DateTimeZone? zone = null;
        Attended? most = null;
        Volume? cup = null;
        Share? slack = null;
        var protection = Protection.Unsaid;
        var painters = Numbered(1);
        Sequence<BenchTool> tools = [];
        var climate = BenchClimate.Standard;
        var away = new List<AwayDays>();
        var sittings = new SittingBinder(desk);
        foreach (var (what, value) in mapping.Entries)
        {
            switch (what.Text)
            {
                case "zone":
                    zone = Zone(value);
                    break;
                case "sittings":
                    sittings.Bind(value, mayBeWeekly: true);
                    break;
                case "extra":
                    sittings.Bind(value, mayBeWeekly: false);
                    break;
                case "away":
                    foreach (var item in desk.OneOrMore(value, "dates such as [2026-12-08, 2026-12-20..2026-12-26]"))
                    {
                        if (desk.Says(item, CalendarText.Dates, "a date such as 2026-12-08, or 2026-12-08..2026-12-10", out var days))
                            away.Add(days);
                    }

                    break;
                case "painters":
                    painters = Painters(value);
                    break;
                case "tools":
                    tools = Tools(value);
                    break;
                case "climate":
                    climate = ClimateBinder.Bind(desk, value);
                    break;
                case "cup":
                    cup = desk.Said(value, AmountText.Volume, AmountText.VolumeExpected);
                    if (cup is { Millilitres: < LeastCup })
                        desk.Error(value, "No airbrush cup holds so little.", "Write what the cup holds, 0.5 mL or more, such as 7 mL.");
                    break;
                case "protection":
                    protection = ProtectionBinder.Bind(desk, value);
                    break;
                case "slack":
                    slack = desk.Said(value, AmountText.Share, AmountText.ShareExpected);
                    if (slack is { Fraction: > 0.9 })
                        desk.Error(value, "That leaves next to nothing of a sitting.", "Write a share from 0 % to 90 %.");
                    break;
                case "most-per-day":
                    most = desk.Said(value, DurationText.Attended, DurationText.Expected);
                    if (most is { Minutes: 0 })
                        desk.Error(value, "No time at all leaves nothing to plan.", "Write the most you want to do in one day, such as 3 h.");
                    break;
                default:
                    desk.UnknownKey(what, "a bench", Keys.Select(known => known.Name));
                    break;
            }
        }

        if (mapping["zone"] is null)
            desk.MissingKey(mapping, "The bench", "zone", "its time zone, such as Europe/Lisbon", key);
        if (mapping["sittings"] is null && mapping["extra"] is null)
            desk.MissingKey(mapping, "The bench", "sittings", "when you sit there, such as [{ days: mon-fri, from: 19:00, to: 22:00 }]", key);
        if (zone is null)
            return null;
        sittings.NoteSkippedHours(zone);
        foreach (var (days, painter) in onSomeDays.Where(at => !Meets(at.Painter, sittings, away)))
            desk.Warning(days, $"{painter.Name} never sits at the bench: there is no sitting on any of these days.", "Add a sitting on one of them, or write other days.");
        return new Bench
        {
            Zone = zone,
            Weekly = sittings.Weekly.ToSequence(),
            Dated = sittings.Dated.ToSequence(),
            Away = away.ToSequence(),
            Painters = painters,
            Tools = tools,
            Climate = climate,
            Slack = slack ?? new Share(0.15),
            MostPerDay = most,
            Cup = cup,
            Protection = protection,
            Place = key.Place,
        };
    }

    // Whether a painter comes on any day with a sitting; a bench without any is told of elsewhere.
    private static bool Meets(Painter painter, SittingBinder sittings, List<AwayDays> away)
    {
        if (sittings.Weekly.Count == 0 && sittings.Dated.Count == 0)
            return true;
        var dates = sittings.Dated.Select(sitting => sitting.Date).Where(IsThere).ToList();
        return painter.Weekdays.Any(day => sittings.Weekly.Any(sitting => sitting.Days.Contains(day)) || dates.Exists(date => date.DayOfWeek == day))
            || painter.Dates.Any(date => IsThere(date) && (dates.Contains(date) || sittings.Weekly.Any(sitting => sitting.Days.Contains(date.DayOfWeek))));

        bool IsThere(LocalDate date) => !away.Exists(days => days.First <= date && date <= days.Last);
    }

    private DateTimeZone? Zone(SyntaxNode node)
    {
        if (desk.Text(node, "a time zone, such as Europe/Lisbon") is not { } name)
            return null;
        var zone = DateTimeZoneProviders.Tzdb.GetZoneOrNull(name);
        if (zone is null)
            desk.UnknownName(node, name, "time zone", DateTimeZoneProviders.Tzdb.Ids.Where(id => id.Contains('/', StringComparison.Ordinal) || id == "UTC"));
        return zone;
    }

    private static Sequence<Painter> Numbered(int count) =>
        Enumerable.Range(1, count).Select(number => new Painter(FormattableString.Invariant($"painter {number}"), [])).ToSequence();

    private Sequence<Painter> Painters(SyntaxNode node)
    {
        const string Expected = "how many, such as 2, or their names, such as [Ana, Rui]";
        if (node is TextNode single)
            return Numbered(desk.Says(single, text => NumberText.Whole(text, 1, MostPainters), Expected, out var count) ? count : 1);
        var items = desk.OneOrMore(node, Expected);
        if (items.Count > MostPainters)
            desk.Error(node, $"There are more than {MostPainters} painters.", "Plan the batch in several files.");
        var painters = new List<Painter>();
        var named = new Dictionary<string, SyntaxNode>(StringComparer.Ordinal);
        foreach (var item in items.Take(MostPainters))
        {
            var nameNode = item is MappingNode mapping ? mapping["painter"] : item;
            var told = desk.FindingCount;
            var painter = item is MappingNode particulars ? Particular(particulars) : new Painter("", []);
            if (nameNode is null || desk.NewName(nameNode, "a painter") is not { } name)
                continue;
            if (!named.TryAdd(name, nameNode))
                desk.Error(nameNode, $"The painter ‘{name}’ is given twice.", "Keep one of the two.", new Related(named[name].Place, "first given here"));
            else
                painters.Add(painter with { Name = name });
            if (desk.FindingCount == told && item is MappingNode particular && particular["days"] is { } days)
                onSomeDays.Add((days, painter with { Name = name }));
        }

        return painters.Count > 0 ? painters.ToSequence() : Numbered(1);
    }

    private Painter Particular(MappingNode mapping)
    {
        var painter = new Painter("", []);
        foreach (var (key, value) in mapping.Entries)
        {
            painter = key.Text switch
            {
                "does" => painter with { Does = Verbs(value) },
                "days" => Coming(value, painter),
                _ => painter,
            };
            if (!Array.Exists(PainterKeys, known => known.Name == key.Text))
                desk.UnknownKey(key, "a painter", PainterKeys.Select(known => known.Name));
        }

        if (mapping["painter"] is null)
            desk.MissingKey(mapping, "The painter", "painter", "a name");
        return painter;
    }

    private Sequence<string> Verbs(SyntaxNode node)
    {
        var verbs = new List<string>();
        foreach (var item in desk.OneOrMore(node, "verbs such as [coat, varnish]"))
        {
            if (desk.Text(item, "a verb") is not { } verb)
                continue;
            if (shelf.Verbs.Named(verb) is null)
                desk.UnknownName(item, verb, "verb", shelf.Verbs.Names);
            else
                verbs.Add(verb);
        }

        return verbs.Distinct().ToSequence();
    }

    private Painter Coming(SyntaxNode node, Painter painter)
    {
        const string Expected = "weekdays and dates such as [sat, 2026-12-08]";
        var (weekdays, dates) = (new List<IsoDayOfWeek>(), new List<LocalDate>());
        foreach (var item in desk.OneOrMore(node, Expected))
        {
            if (item is TextNode { Text: [>= '0' and <= '9', ..] })
            {
                if (desk.Says(item, CalendarText.Date, Expected, out var date))
                    dates.Add(date);
            }
            else if (desk.Says(item, CalendarText.Days, Expected, out var days))
                weekdays.AddRange(days);
        }

        return painter with { Weekdays = weekdays.Distinct().Order().ToSequence(), Dates = dates.Distinct().Order().ToSequence() };
    }

    private Sequence<BenchTool> Tools(SyntaxNode node)
    {
        var tools = new List<BenchTool>();
        if (desk.Mapping(node, "tools with their number, such as { airbrush: 1, drying rack: 24 }") is not { } mapping)
            return [];
        foreach (var (key, value) in mapping.Entries)
        {
            if (desk.NewName(key, "a tool") is { } name && desk.Says(value, text => NumberText.Whole(text, 1, MostTools), "how many there are, such as 1", out var count))
            {
                tools.Add(new BenchTool(name, count));
                if (!ToolNames.Exists(known => string.Equals(known.Text, key.Text, StringComparison.OrdinalIgnoreCase)))
                    ToolNames.Add(key);
            }
        }

        return tools.ToSequence();
    }
}
