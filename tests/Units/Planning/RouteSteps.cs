using Pipeline.Abstractions;
using Pipeline.Tests.Units.Plugins;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Planning;

/// <summary>The steps of one model, in a painter's words.</summary>
internal sealed class RouteSteps(string name, int count, string[] areas, int line)
{
    private readonly List<Step> steps = [];
    private readonly List<Pin> pins = [];
    private readonly List<StepPace> paces = [];
    private readonly Dictionary<string, string[]> masked = [];

    public static readonly Family Waterborne = Family("waterborne acrylic");
    public static readonly Family Lacquer = Family("acrylic lacquer");
    public static readonly Family Metallic = Family("alcohol metallic");

    public List<Paint> Paints { get; } = [];

    public RouteSteps Clean(double minutes = 2) =>
        Add("clean", StepKind.Preparation, areas, new Work { PerUnit = new Attended(minutes), SetUp = new Attended(5) }, new Deed.Prepare(Preparation.Washed, DryingRange.Hours(1, 2), Carrier.Water));

    public RouteSteps Spray(Paint paint, string on = "", double minutes = 2, int coats = 1, LayerRole role = LayerRole.Colour) =>
        Lay(paint, on, role, Method.Airbrush, coats, new Work { PerUnit = new Attended(minutes), SetUp = new Attended(3), Tool = "airbrush", Load = paint, NeedsDryingPlace = true });

    public RouteSteps Brush(Paint paint, string on = "", double minutes = 6, int coats = 1) =>
        Lay(paint, on, LayerRole.Colour, Method.Brush, coats, new Work { PerUnit = new Attended(minutes), SetUp = new Attended(2) });

    public RouteSteps Mask(string mask, string on, double minutes = 4, string material = "low-tack tape")
    {
        masked[mask] = on.Split(' ');
        return Add("mask", StepKind.Masking, masked[mask], new Work { PerUnit = new Attended(minutes), SetUp = new Attended(2) }, new Deed.PutMaskOn(mask, AllPlugins.MaskMaterials.Single(m => m.Name == material)));
    }

    public RouteSteps Unmask(string mask, double minutes = 1) =>
        Add("unmask", StepKind.Removal, masked[mask], new Work { PerUnit = new Attended(minutes) }, new Deed.TakeMaskOff(mask));

    public RouteSteps Cure(DryingState to) => Add("cure", StepKind.Preparation, areas, new Work(), new Deed.Await(to));

    /// <summary>Under a lamp or in a bath of the bench: hands for each unit, or once for all together, then it runs by itself.</summary>
    public RouteSteps In(string place, double hands, double alone, bool together = false, string on = "") =>
        Add("cure", StepKind.Preparation, Named(on), new Work { PerUnit = new Attended(hands), Unattended = new Drying(alone), StandsIn = place, Together = together }, new Deed.Prepare(Preparation.PostCured));

    public RouteSteps Rest(double hours) =>
        Add("wait", StepKind.Preparation, areas, new Work { Unattended = Drying.Hours(hours) }, new Deed.Rest(Drying.Hours(hours)));

    public RouteSteps Photograph(double minutes = 2, double putAway = 0) =>
        Add("photograph", StepKind.Preparation, areas, new Work { PerUnit = new Attended(minutes), SetUp = new Attended(5), PutAway = new Attended(putAway) }, new Deed.Handle());

    public RouteSteps Work(string verb, double minutes, string on = "") =>
        Add(verb, StepKind.Preparation, Named(on), new Work { PerUnit = new Attended(minutes) }, new Deed.Prepare(Preparation.Trimmed));

    /// <summary>The last step starts at a decided time.</summary>
    public RouteSteps At(string moment)
    {
        pins.Add(new Pin(steps.Count - 1, Workshop.Moment(moment), steps[^1].Place));
        return this;
    }

    /// <summary>The last step is planned at a pace of its own.</summary>
    public RouteSteps Paced(Pace pace)
    {
        paces.Add(new StepPace(steps.Count - 1, pace));
        return this;
    }

    /// <summary>The coats of the last step dry between; its minutes are those of one.</summary>
    public RouteSteps DryBetween() => Change(step => step with { Work = step.Work with { Passes = step.Lays.Single().Layer.Coats } });

    public RouteSteps Note(string note) => Change(step => step with { Note = note });

    public static Paint Pot(string name, Family family, string? colour = null, double? stock = null) =>
        Plugins.Bench.Pot(name, family) with { Colour = colour, IsMetallic = family == Metallic, Stock = stock is { } ml ? new Volume(ml) : null };

    public static Paint Mix(string name, Paint of, double thinnerPercent, ShareOf share = ShareOf.Mix) =>
        of with { Name = name, Recipe = new Recipe([new RecipePart(of, 2)], new Thinning("thinner", new Share(thinnerPercent / 100), share)) };

    public Route Route(Due? due, double weight = 1) => new()
    {
        Model = new Model
        {
            Name = name,
            Kit = "Harbour",
            Place = new Place("harbour.yaml", line, 9),
            Count = count,
            Material = AllPlugins.Materials.Single(row => row.Name == "resin"),
            Areas = [.. areas.Select(area => new Area(area, name, new SurfaceSize(10)))],
            Parts = [name],
        },
        Steps = steps.ToSequence(),
        Pins = pins.ToSequence(),
        Paces = paces.ToSequence(),
        Due = due,
        DueWeight = weight,
    };

    private RouteSteps Lay(Paint paint, string on, LayerRole role, Method method, int coats, Work work)
    {
        Paints.Add(paint);
        var layer = Layer.Of(paint, role, method, Layer.UsualBody(method), coats);
        // the masked areas around are what the mask is for; overspray elsewhere is meant
        return Add(role == LayerRole.Undercoat ? "undercoat" : "coat", StepKind.Coat, Named(on), work, new Deed.Lay(layer, ["all"]));
    }

    private string[] Named(string on) => on.Length == 0 ? areas : on.Split(' ');

    private RouteSteps Change(Func<Step, Step> change)
    {
        steps[^1] = change(steps[^1]);
        return this;
    }

    private RouteSteps Add(string verb, StepKind kind, string[] on, Work work, Deed deed)
    {
        steps.Add(new Step
        {
            Index = steps.Count,
            Verb = verb,
            Kind = kind,
            Place = new Place("harbour.yaml", line + steps.Count + 1, 13),
            As = deed switch { Deed.PutMaskOn put => put.Mask, _ => string.Join('+', on) },
            Areas = on.ToSequence(),
            Deeds = [deed],
            Work = work,
        });
        return this;
    }

    private static Family Family(string name) => AllPlugins.Families.Single(family => family.Name == name);
}

/// <summary>The waits most painters keep, so that plans have something to wait for.</summary>
internal sealed class UsualWaits : Rule
{
    public override string Name => "usual-waits";

    public override string Summary => "Coats wait until recoatable, masks until mask-safe, handling until handleable.";

    public override string Source => "common practice";

    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        foreach (var deed in moment.Step.Deeds)
        {
            foreach (var area in moment.Step.Areas)
            {
                if (deed is Deed.TakeMaskOff off && moment.Before[area].Masks.FirstOrDefault(mask => mask.Name == off.Mask) is { } mask)
                {
                    yield return Say(moment, area, mask.Step, new Span.AtMost(mask.Material.TimeOn!.Value, mask.Material.HardLimit), Carrier.None, "off in time", "The mask leaves residue.");
                    continue;
                }

                if (State(deed) is { } state && moment.Before[area].Top is { Step: >= 0 } layer && layer.TimeTo(state) is { } time)
                    yield return Say(moment, area, layer.Step, new Span.AtLeast(time), layer.Family!.Carrier, state.ToString(), "The coat below suffers.");
            }
        }
    }

    private static DryingState? State(Deed deed) => deed switch
    {
        Deed.Lay => DryingState.Recoatable,
        Deed.PutMaskOn => DryingState.MaskSafe,
        Deed.Handle => DryingState.Handleable,
        _ => null,
    };

    private static Verdict.Needs Say(Moment moment, string area, int since, Span span, Carrier carrier, string what, string message) => new()
    {
        Step = moment.Step.Index,
        Since = since,
        Span = span,
        Carrier = carrier,
        For = what,
        Areas = [area],
        Message = message,
        Remedy = "Wait.",
    };
}
