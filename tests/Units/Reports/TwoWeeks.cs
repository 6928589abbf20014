using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Planning;
using static Pipeline.Tests.Units.Reports.Harbour;

namespace Pipeline.Tests.Units.Reports;

/// <summary>
/// Two weeks of one painter: line divers in brass with masked viewports, a slipway crane whose stripes are masked over a night,
/// and tokens that are late.
/// </summary>
internal static class TwoWeeks
{
    private const string Closed = "Nobody sits at the bench earlier, or not for long enough.";
    private const string Hands = "The hands are busy with the task before it until then.";

    public static Place UndercoatOfDivers { get; } = new("workflows/tidewater.yaml", 92, 9);

    public static Plan Plan { get; } = Empty with
    {
        Days = [Washing, Undercoating, Brass, Stripes, Unmasking, Washes, Varnish, Tokens],
        Finishes =
        [
            new("Line diver", "Salvage divers", 3, At("11 Dec 19:36"), At("11 Dec 20:06"), At("12 Dec 18:00"), At("18 Dec 19:36")),
            new("Slipway crane", "Slipway", 1, At("11 Dec 20:24"), At("12 Dec 09:00"), At("12 Dec 18:00"), At("25 Dec 20:24")),
            new("Cargo token", "Slipway", 5, At("13 Dec 11:40"), At("13 Dec 12:10"), At("12 Dec 18:00"), null),
        ],
        Masks =
        [
            new("Line diver", "discs", "low-tack tape", At("4 Dec 19:24"), At("4 Dec 20:40"), At("5 Dec 19:00")),
            new("Slipway crane", "bands", "low-tack tape", At("5 Dec 12:30"), At("6 Dec 11:15"), At("6 Dec 12:30")),
        ],
        Shopping =
        [
            new("slate undercoat", 22.4, 60, ["undercoat"]),
            new("bellfounder brass", 18.2, 12, ["old brass"]),
            new("brass alcohol", 4.6, null, ["old brass"]),
            new("derrick yellow", 36, 30, ["jib yellow"]),
            new("bilge brown", 3.1, 15, ["bilge wash"]),
        ],
        Findings =
        [
            new()
            {
                Level = Level.Error,
                Place = new Place("workflows/tidewater.yaml", 4, 6),
                Model = "Cargo token",
                Message = "Cargo token cannot be done by Sat 12 Dec 18:00: the earliest found is Sun 13 Dec 12:10, 18 h 10 min late.",
                Remedy = "Add a sitting, begin earlier, move the due time, or plan at a brisk pace and read what it risks.",
            },
            new()
            {
                Rule = "tape-on-young-coat",
                Level = Level.Warning,
                Place = UndercoatOfDivers,
                Model = "Line diver",
                Areas = ["suit"],
                Message = "The undercoat of the suit is 19 h old when tape goes on; 21 h 36 min would be comfortable.",
                Remedy = "Start the mask at 16:56 or later.",
            },
            new()
            {
                Rule = "matt-over-metal",
                Level = Level.Warning,
                Place = new Place("workflows/tidewater.yaml", 140, 9),
                Message = "Matt varnish takes the shine off the hook.",
                Silenced = "the hook is meant to look dead",
            },
        ],
        WaysOut =
        [
            new(new Change.Brisk([new BriskStep("Cargo token", "varnish all areas", new Place("workflows/tidewater.yaml", 150, 9))]), "follow at the low drying figure (pace: brisk) at 'varnish all areas' on Cargo token", At("12 Dec 14:20"), 0, FillsSittings: false),
            new(new Change.MoreSittings([new SittingTime(At("6 Dec 15:00"), At("6 Dec 17:15"))]), "one more sitting, Sun 6 Dec 15:00–17:15", At("12 Dec 15:07"), 0, FillsSittings: true),
            new(new Change.OneMorePainter([new LocalDate(2026, 12, 8)]), "a second painter on Tue 8 Dec", At("12 Dec 16:30"), 0, FillsSittings: false),
            new(new Change.LeaveOut("Slipway crane"), "leave Slipway crane for later", At("11 Dec 20:06"), 0, FillsSittings: false),
        ],
        Measure = new PlanMeasure(591, 1140, 1020, At("10 Dec 20:05"), 1, IsBestAsParted: true, CleanOuts: 4, StoppedEarly: false),
        CriticalChain =
        [
            "Thu 3 Dec 19:20 – Line diver: Airbrush slate undercoat on all areas. Nobody sits at the bench earlier, or not for long enough.",
            "Fri 4 Dec 19:00 – Line diver: Mask the viewports with low-tack tape. It waits for mask-safe: 'undercoat all areas' (Thu 3 Dec 19:40) needs 21 h 36 min, until Fri 4 Dec 17:16.",
            "Sat 5 Dec 12:00 – Slipway crane: Mask the jib with low-tack tape. It waits for mask-safe: 'coat the jib' (Fri 4 Dec 20:30) needs 15 h, until Sat 5 Dec 11:30.",
            "Fri 11 Dec 20:00 – Slipway crane: Airbrush clear w matt on all areas. It waits for wash-safe: 'wash all areas' (Thu 10 Dec 20:05) needs 21 h 36 min, until Fri 11 Dec 17:41.",
        ],
        Assumptions =
        [
            "Drying times of acrylic lacquer, waterborne acrylic and enamel are the usual ones, not a label's.",
            "Minutes of 31 of 34 steps are the usual ones; 'minutes' and 'set-up' in the file override them.",
        ],
    };

    private static PlannedDay Washing => Day(Sitting(
        "30 Nov 19:00-21:00",
        Task("30 Nov 19:00-19:16", "Line diver 1-3/3", "Clean all areas with soapy water", "The plan begins here.") with
        {
            Starts = [Until("dry", "30 Nov 20:16", "30 Nov 21:04")],
        },
        Task("30 Nov 19:16-19:51", "Slipway crane 1-1/1", "Glue all areas with PVA", Hands) with
        {
            Starts = [Until("handleable", "30 Nov 21:51", "30 Nov 23:27")],
            Note = "three sub-assemblies: tower, jib, cabin",
        }) with
    {
        TakeOut = ["soapy water", "PVA"],
        Drying = [new("Slipway crane", "PVA on all areas", "handleable", At("30 Nov 23:27")), new("Line diver", "water on all areas", "dry", At("30 Nov 21:04"))],
        Free = new FreeTime(51, new FreeBecause.AllWaits()),
    });

    private static PlannedDay Undercoating => Day(Sitting(
        "3 Dec 19:00-21:00",
        Task("3 Dec 19:00-19:20", "Slipway crane 1-1/1", "Sand all areas", Closed) with { Cautions = [Dust.Name], Note = "extraction on, fine grit, edges first" },
        Task("3 Dec 19:20-19:40", "Line diver 1-3/3", "Airbrush slate undercoat on all areas", Hands) with
        {
            Tool = "airbrush",
            Paint = new PaintUse("slate undercoat", 3.2, 1, null),
            Starts = [Until("recoatable", "3 Dec 19:50", "3 Dec 19:58"), Until("mask-safe", "3 Dec 21:40", "4 Dec 17:16")],
            Cautions = [Mist.Name],
            Place = UndercoatOfDivers,
        },
        Task("3 Dec 19:40-20:20", "Slipway crane 1-1/1", "Airbrush slate undercoat on all areas", Hands) with
        {
            Tool = "airbrush",
            Paint = new PaintUse("slate undercoat", 15.4, 3, null),
            Starts = [Until("recoatable", "3 Dec 20:30", "3 Dec 20:38")],
            Cautions = [Mist.Name],
        },
        CloseDown("3 Dec 20:20-20:32", "slate undercoat")) with
    {
        TakeOut = ["airbrush", "slate undercoat", "to clean with: lacquer thinner", "check the air: 10–30 °C, 75 % humidity at most"],
        Cautions = [Dust, Mist],
        Drying = [new("Line diver", "slate undercoat on all areas", "mask-safe", At("4 Dec 17:16"))],
    });

    private static PlannedDay Brass => Day(Sitting(
        "4 Dec 19:00-21:00",
        Task("4 Dec 19:00-19:24", "Line diver 1-3/3", "Mask the viewports with low-tack tape (discs)", "It waits for mask-safe: 'undercoat all areas' (Thu 3 Dec 19:40) needs 21 h 36 min, until Fri 4 Dec 17:16.") with
        {
            Note = "nine punched 3 mm discs",
            Cautions = [],
        },
        Task("4 Dec 19:24-19:50", "Line diver 1-3/3", "Airbrush old brass on the suit, helmet and lantern", Hands) with
        {
            Tool = "airbrush",
            Paint = new PaintUse("old brass", 3.0, 1, 0),
            Starts = [Until("recoatable", "4 Dec 20:00", "4 Dec 20:04")],
        },
        Task("4 Dec 19:50-20:30", "Slipway crane 1-1/1", "Airbrush jib yellow on the jib and stripes, 2 coats", "The airbrush is in use for 'coat the suit, helmet and lantern' on Line diver (Fri 4 Dec 19:24) until Fri 4 Dec 19:50.") with
        {
            Tool = "airbrush",
            Paint = new PaintUse("jib yellow", 10.9, 2, 1),
            CleanOutBefore = new CleanOut("airbrush", "old brass", 12),
            LoadedUntil = At("4 Dec 20:40"),
            Starts = [Until("mask-safe", "5 Dec 08:30", "5 Dec 11:30", isDefault: false)],
        },
        Task("4 Dec 20:30-20:40", "Line diver 1-3/3", "Unmask discs", Hands) with { NotLaterThan = At("5 Dec 19:00") },
        CloseDown("4 Dec 20:40-20:55", "jib yellow")) with
    {
        TakeOut = ["low-tack tape", "airbrush", "for old brass: bellfounder brass and brass alcohol", "for jib yellow: derrick yellow, rope bone and acrylic thinner", "to clean with: isopropyl"],
        Mixes =
        [
            new("old brass", 3, [new("bellfounder brass", 4, 2.4, 48), new("brass alcohol", 1, 0.6, 12)], null),
            new("jib yellow", 11, [new("derrick yellow", 6, 6.6, 132), new("rope bone", 1, 1.1, 22), new("acrylic thinner", 3, 3.3, 66)], At("4 Dec 23:50")),
        ],
        Cautions = [Mist],
        Drying = [new("Slipway crane", "jib yellow on the jib and stripes", "mask-safe", At("5 Dec 11:30"))],
    });

    private static PlannedDay Stripes => Day(Sitting(
        "5 Dec 10:00-13:00",
        Task("5 Dec 12:00-12:30", "Slipway crane 1-1/1", "Mask the jib with low-tack tape (bands)", "It waits for mask-safe: 'coat the jib and stripes' (Fri 4 Dec 20:30) needs 15 h, until Sat 5 Dec 11:30."),
        Task("5 Dec 12:30-12:48", "Slipway crane 1-1/1", "Airbrush signal black on the stripes", Hands) with
        {
            Tool = "airbrush",
            Paint = new PaintUse("signal black", 2.6, 1, null),
            Starts = [Until("touch-dry", "5 Dec 12:53", "5 Dec 13:02")],
        },
        CloseDown("5 Dec 12:48-13:00", "signal black")) with
    {
        TakeOut = ["low-tack tape", "airbrush", "signal black"],
        Cautions = [Mist],
        MasksOn = [new("Slipway crane", "bands", At("6 Dec 11:15"), At("6 Dec 12:30"))],
        Drying = [new("Slipway crane", "signal black on the stripes", "touch-dry", At("5 Dec 13:02"))],
    });

    private static PlannedDay Unmasking => Day(Sitting(
        "6 Dec 11:00-13:00",
        Task("6 Dec 11:00-11:15", "Slipway crane 1-1/1", "Unmask bands", Closed) with { NotLaterThan = At("6 Dec 12:30") },
        Task("6 Dec 11:15-12:39", "Line diver 1-2/3", "Brush rope bone on the hoses, 2 coats", Hands) with
        {
            Paint = new PaintUse("rope bone", 0.03, 0, null),
            Starts = [Until("recoatable", "6 Dec 12:59", "6 Dec 13:33")],
        }) with
    {
        TakeOut = ["rope bone"],
    });

    private static PlannedDay Washes => Day(Sitting(
        "10 Dec 19:00-21:00",
        Task("10 Dec 19:00-19:42", "Line diver 3-3/3", "Brush rope bone on the hoses, 2 coats", Closed) with { Paint = new PaintUse("rope bone", 0.02, 0, null) },
        Task("10 Dec 19:42-20:05", "Slipway crane 1-1/1", "Wash all areas with bilge wash", Hands) with
        {
            Paint = new PaintUse("bilge wash", 6, 0, 0),
            Starts = [Until("sealable", "11 Dec 08:05", "11 Dec 17:41")],
        }) with
    {
        TakeOut = ["rope bone", "for bilge wash: bilge brown and white spirit"],
        Mixes = [new("bilge wash", 6, [new("bilge brown", 1, 1.5, 30), new("white spirit", 3, 4.5, 90)], null)],
        Drying = [new("Slipway crane", "bilge wash on all areas", "sealable", At("11 Dec 17:41"))],
    });

    private static PlannedDay Varnish => Day(Sitting(
        "11 Dec 19:00-21:00",
        Task("11 Dec 19:00-19:36", "Line diver 1-3/3", "Airbrush clear w gloss on the suit, helmet, lantern and viewports, as a mist", Closed) with
        {
            Tool = "airbrush",
            Paint = new PaintUse("clear w gloss", 3.4, 1, null),
            Starts = [Until("handleable", "11 Dec 19:56", "11 Dec 20:06")],
        },
        Task("11 Dec 20:00-20:24", "Slipway crane 1-1/1", "Airbrush clear w matt on all areas", "It waits for wash-safe: 'wash all areas' (Thu 10 Dec 20:05) needs 21 h 36 min, until Fri 11 Dec 17:41.") with
        {
            Tool = "airbrush",
            Paint = new PaintUse("clear w matt", 18, 4, null),
            CleanOutBefore = new CleanOut("airbrush", "clear w gloss", 3),
            Starts = [Until("handleable", "11 Dec 22:24", "12 Dec 09:00")],
        },
        CloseDown("11 Dec 20:24-20:36", "clear w matt")) with
    {
        TakeOut = ["airbrush", "clear w gloss", "clear w matt"],
        Cautions = [Mist],
        Free = new FreeTime(24, new FreeBecause.TooShort()),
    });

    private static PlannedDay Tokens => Day(Sitting(
        "13 Dec 11:00-13:00",
        Task("13 Dec 11:00-11:40", "Cargo token 1-5/5", "Brush signal black on the rim", Closed) with
        {
            Paint = new PaintUse("signal black", 0.4, 0, null),
            Starts = [Until("handleable", "13 Dec 12:00", "13 Dec 12:10")],
        }) with
    {
        TakeOut = ["signal black"],
    });
}
