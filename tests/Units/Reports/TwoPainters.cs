using Pipeline.Planning;
using static Pipeline.Tests.Units.Reports.Harbour;

namespace Pipeline.Tests.Units.Reports;

/// <summary>One evening and a Saturday of two painters at one bench, with a sitting that runs past midnight.</summary>
internal static class TwoPainters
{
    public static Plan Plan { get; } = Empty with
    {
        Days =
        [
            Day(
                Sitting(
                    "4 Dec 19:00-01:00",
                    Task("4 Dec 19:00-21:10", "Winch diver 1-7/12", "Brush rope bone on the hoses, 2 coats"),
                    Task("4 Dec 21:10-00:50", "Winch diver 8-12/12", "Brush rope bone on the hoses, 2 coats", "Inês is busy with 'coat the hoses' until 21:10.") with
                    {
                        Starts = [Until("handleable", "5 Dec 02:50", "5 Dec 04:26", isDefault: false)],
                    }),
                Sitting(
                    "4 Dec 19:00-21:00",
                    Task("4 Dec 19:00-20:45", "Slipway crane 1-1/1", "Decal the load plate and chevrons")) with
                {
                    Painter = "Rui",
                    Drying = [new LeftDrying("Slipway crane", "decals on the load plate and chevrons", "sealable", At("5 Dec 18:21"))],
                }),
            Day(
                Sitting("5 Dec 19:00-21:00", Task("5 Dec 19:00-19:12", "Slipway crane 1-1/1", "Airbrush clear w gloss on the load plate and chevrons, as a mist")) with { Painter = "Rui" }),
            Day(
                Sitting(
                    "6 Dec 19:00-21:00",
                    Task("6 Dec 19:00-19:12", "Winch diver 1-12/12", "Airbrush thin rope on the hoses") with { Paint = new PaintUse("thin rope", 3.8, 1, 0) }) with
                {
                    Mixes = [new MixOrder("thin rope", 5.5, [new("rope bone", 7, 3.85, 77), new("acrylic thinner", 3, 1.65, 33)], At("6 Dec 21:00")) { AlsoFor = ["Rui"] }],
                },
                Sitting(
                    "6 Dec 19:00-21:00",
                    Task("6 Dec 19:30-19:40", "Slipway crane 1-1/1", "Airbrush thin rope on the ropes") with { Paint = new PaintUse("thin rope", 1.6, 1, 0, "Inês") }) with { Painter = "Rui" }),
        ],
        Finishes =
        [
            new("Winch diver", "Salvage divers", 12, At("5 Dec 00:50"), At("5 Dec 04:26"), At("11 Dec 18:00"), null),
            new("Slipway crane", "Slipway", 1, At("5 Dec 19:12"), At("5 Dec 23:12"), At("12 Dec 18:00"), null),
        ],
        Measure = new PlanMeasure(452, 600, 452, At("5 Dec 21:40"), 0, IsBestAsParted: false, CleanOuts: 0, StoppedEarly: true),
        CriticalChain = ["Fri 4 Dec 19:00 – Slipway crane: Decal the load plate and chevrons. The plan begins here."],
    };
}
