using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Surfaces;

/// <summary>Steps made by hand, for walks without a file.</summary>
internal sealed class HandMade
{
    private static readonly DryingTable Quick = new(
        DryingRange.Minutes(5, 15),
        DryingRange.Minutes(15, 30),
        DryingRange.Minutes(60, 120),
        DryingRange.Hours(12, 24),
        DryingRange.Hours(24, 48),
        DryingRange.Days(3, 7));

    public static readonly Family Waterborne = new()
    {
        Name = "waterborne acrylic",
        Carrier = Carrier.Water,
        Thin = Quick,
        Heavy = Quick,
        Source = "invented",
    };

    public static readonly Material Plastic = new() { Name = "styrene", Source = "invented" };

    public static readonly MaskMaterial Tape = new()
    {
        Name = "low-tack tape",
        Kind = MaskKind.Tape,
        Needs = DryingState.MaskSafe,
        TimeOn = Drying.Hours(24),
        Source = "invented",
    };

    private readonly List<Step> steps = [];

    private HandMade(Model model) => Model = model;

    public Model Model { get; }

    /// <summary>A model of one part with these areas; <c>part/area</c> puts an area on a part of its own.</summary>
    public static HandMade Of(params string[] areas)
    {
        var list = areas.Select(area => area.Split('/'))
            .Select(names => new Area(names[^1], names.Length > 1 ? names[0] : "piece", new SurfaceSize(5)))
            .ToSequence();
        return new HandMade(new Model
        {
            Name = "Harbour cat",
            Kit = "Cats",
            Place = new Place("cats.yaml", 1, 1),
            Count = 1,
            Material = Plastic,
            Areas = list,
            Parts = list.Select(area => area.Part).Distinct().ToSequence(),
        });
    }

    public static Paint Paint(string name, Sheen sheen = Sheen.Matt) => new()
    {
        Name = name,
        Place = new Place("cats.yaml", 1, 1),
        Family = Waterborne,
        Sheen = sheen,
        Thin = Quick,
        Heavy = Quick,
        Effect = Quick,
    };

    public HandMade Clean(params string[] areas) => Step("clean", StepKind.Preparation, areas, new Deed.Prepare(Preparation.Washed));

    public HandMade Brush(string paint, params string[] areas) =>
        Step("coat", StepKind.Coat, areas, new Deed.Lay(Layer.Of(Paint(paint), LayerRole.Colour, Method.Brush, Body.Heavy)));

    public HandMade Spray(string paint, params string[] areas) =>
        Step("coat", StepKind.Coat, areas, new Deed.Lay(Layer.Of(Paint(paint), LayerRole.Colour, Method.Airbrush, Body.Thin)));

    public HandMade Varnish(string paint, params string[] areas) =>
        Step("varnish", StepKind.Coat, areas, new Deed.Lay(Layer.Of(Paint(paint), LayerRole.Varnish, Method.Airbrush, Body.Thin)));

    public HandMade Mask(string name, params string[] areas) => Step("mask", StepKind.Masking, areas, new Deed.PutMaskOn(name, Tape));

    public HandMade Unmask(string name, params string[] areas) => Step("unmask", StepKind.Removal, areas, new Deed.TakeMaskOff(name));

    public HandMade Strip(params string[] areas) => Step("strip", StepKind.Removal, areas, new Deed.Strip("alkaline cleaner", Carrier.Water));

    public HandMade CleanBack(params string[] areas) => Step("clean-back", StepKind.Removal, areas, new Deed.CleanBack("white spirit", Carrier.Spirit));

    public HandMade Join(string[] parts, string[] hides) =>
        Step("join", StepKind.Preparation, [], new Deed.Join(parts.ToSequence(), hides.ToSequence(), null, Carrier.None));

    public HandMade After(int earlier)
    {
        steps[^1] = steps[^1] with { After = [earlier] };
        return this;
    }

    public HandMade Allow(string rule, string reason)
    {
        steps[^1] = steps[^1] with { Silences = [new Silence(rule, reason, steps[^1].Place)] };
        return this;
    }

    public HandMade FromScheme(int line)
    {
        steps[^1] = steps[^1] with { Scheme = "ground", Place = new Place("cats.yaml", line, 9), FollowedFrom = steps[^1].Place };
        return this;
    }

    public HandMade Step(string verb, StepKind kind, string[] areas, params Deed[] deeds)
    {
        steps.Add(new Step
        {
            Index = steps.Count,
            Verb = verb,
            Kind = kind,
            Place = new Place("cats.yaml", 100 + steps.Count, 9),
            As = string.Join('+', areas),
            Areas = areas.ToSequence(),
            Deeds = deeds.ToSequence(),
            Work = new Work(),
        });
        return this;
    }

    public Route Route() => new() { Model = Model, Steps = steps.ToSequence() };

    public Walked Walk(params Rule[] rules) => WalkRoutes([Route()], rules);

    public static Walked WalkRoutes(Sequence<Route> routes, params Rule[] rules) => Pipeline.Surfaces.Walk.Run(
        new Batch
        {
            Tables = Plugins.AllPlugins.Tables,
            Name = "Cats",
            Files = ["cats.yaml"],
            Bench = new Bench { Zone = DateTimeZone.Utc, Painters = [new Painter("painter 1", [])], Place = new Place("cats.yaml", 1, 1) },
            Kits = [new Kit("Cats", new Place("cats.yaml", 1, 1), routes)],
        },
        new Trade { Rules = rules.Select(rule => new Brought<Rule>("Cats", rule)).ToSequence() });
}
