using System.Globalization;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>How much there is to do in a batch, counted while it is bound, so that no file can ask for endless work.</summary>
internal sealed class Workload
{
    /// <summary>Most steps of all routes together, with schemes followed.</summary>
    public const int MostSteps = 100_000;

    /// <summary>Most steps of all units together.</summary>
    public const int MostUnitSteps = 1_000_000;

    /// <summary>Deepest following of schemes from schemes.</summary>
    public const int DeepestFollowing = 24;

    public int Entries { get; set; }

    public long UnitSteps { get; set; }
}

/// <summary>Binds the route of one model: follows schemes, resolves names, asks each verb what its step means.</summary>
internal sealed class RouteBinder
{
    private readonly Schemes schemes;
    private readonly Workload workload;
    private readonly List<Step> steps = [];
    private readonly List<Pin> pins = [];
    private readonly List<StepPace> paces = [];
    private readonly Dictionary<string, int> areaIndexes = new(StringComparer.Ordinal);
    private readonly Dictionary<string, NamedAreas> areas = new(StringComparer.Ordinal);
    private readonly HashSet<string> namesInUse = new(StringComparer.Ordinal);
    private readonly StepBinder stepBinder;

    public RouteBinder(Desk desk, Shelf shelf, Schemes schemes, Workload workload, NamedElsewhere elsewhere, Model model)
    {
        (Desk, Shelf, this.schemes, this.workload, Elsewhere, Model) = (desk, shelf, schemes, workload, elsewhere, model);
        All = new NamedAreas(["all"], model.Areas);
        for (var i = 0; i < model.Areas.Count; i++)
        {
            areaIndexes[model.Areas[i].Name] = i;
            areas[model.Areas[i].Name] = new NamedAreas([model.Areas[i].Name], [model.Areas[i]]);
        }

        foreach (var part in model.Parts)
            areas.TryAdd(part, new NamedAreas([part], model.Areas.Where(area => area.Part == part).ToSequence()));
        stepBinder = new StepBinder(this);
    }

    public Desk Desk { get; }

    public Shelf Shelf { get; }

    /// <summary>Steps of other models, for messages.</summary>
    public NamedElsewhere Elsewhere { get; }

    public Model Model { get; }

    public NamedAreas All { get; }

    public MaskBook Masks { get; } = new();

    /// <summary>The last step of each name, in whatever scheme.</summary>
    public Dictionary<string, NamedStep> LastByName { get; } = new(StringComparer.Ordinal);

    /// <summary>True once a scheme could not be followed: names it would have brought are then no mistake.</summary>
    public bool IsIncomplete { get; private set; }

    /// <summary>For messages: a model that names no parts is not one of its own names.</summary>
    public IEnumerable<string> AreaAndPartNames => areas.Keys.Where(name => areaIndexes.ContainsKey(name) || Model.Parts.Count > 1);

    public Sequence<Step> Steps => steps.ToSequence();

    public Sequence<Pin> Pins => pins.ToSequence();

    public Sequence<StepPace> Paces => paces.ToSequence();

    public int IndexOf(string area) => areaIndexes[area];

    public NamedAreas? AreaOrPart(string name) => areas.GetValueOrDefault(name);

    public void Bind(List<RouteItem> items)
    {
        var named = new Dictionary<string, TextNode>(StringComparer.Ordinal);
        foreach (var item in items)
        {
            if (item is not { As: { } name, AsNode: { } node })
                continue;
            namesInUse.Add(name);
            if (!named.TryAdd(name, node))
                Desk.Error(node, $"Two steps are called ‘{name}’.", "Give one of them another name.", new Related(named[name].Place, "the other"));
        }

        Bind(items, new RouteNames(this, items, null, null, null, [], []), depth: 0, outerAfter: [], outerSilences: []);
    }

    private void Bind(List<RouteItem> items, RouteNames names, int depth, IReadOnlyList<int> outerAfter, Sequence<Silence> outerSilences)
    {
        foreach (var item in items)
        {
            if (++workload.Entries > Workload.MostSteps)
            {
                IsIncomplete = true;
                if (workload.Entries == Workload.MostSteps + 1)
                    Desk.Error(item.Key, string.Create(CultureInfo.InvariantCulture, $"With schemes followed, the batch has more than {Workload.MostSteps:N0} steps."), "Plan fewer models together, or follow schemes less often.");
                return;
            }

            IReadOnlyList<int> after = item.After.Count == 0 ? outerAfter : [.. outerAfter, .. names.Earlier(item)];
            var silences = item.Silences.IsEmpty ? outerSilences : outerSilences.Concat(item.Silences).ToSequence();
            if (item is RouteItem.Follow follow)
                Follow(follow, names, depth, after, silences);
            else if (item is RouteItem.Step step)
                Take(step, names, after, silences);
            else if (item.As is not null)
                names.Add(item.As, new NamedStep(item.As, -1));
        }
    }

    private void Follow(RouteItem.Follow follow, RouteNames names, int depth, IReadOnlyList<int> after, Sequence<Silence> silences)
    {
        if (schemes.Bindings(follow, names, names.Named) is not { Scheme.IsSound: true } bound)
        {
            IsIncomplete = true;
            return;
        }

        if (depth == Workload.DeepestFollowing)
        {
            IsIncomplete = true;
            Desk.Error(follow.Key, $"Schemes follow each other more than {Workload.DeepestFollowing} deep.", "Write some of their steps out.");
            return;
        }

        var inner = new RouteNames(this, bound.Scheme.Items, names, bound.Scheme, names.FollowedFrom ?? follow.Key.Place, bound.Areas, bound.Paints);
        Bind(bound.Scheme.Items, inner, depth + 1, after, silences);
    }

    private void Take(RouteItem.Step form, RouteNames names, IReadOnlyList<int> after, Sequence<Silence> silences)
    {
        var name = form.As is null ? null : names.Scheme is null ? form.As : OwnName(form.As);
        if (stepBinder.Bind(form, names, steps.Count, name) is not { } bound)
        {
            if (form.As is not null)
                names.Add(form.As, new NamedStep(name!, -1));
            return;
        }

        var step = bound.Step with { After = after.Distinct().ToSequence(), Silences = silences };
        Masks.Take(step.Deeds, bound.Areas);
        if (form.As is not null)
            names.Add(form.As, new NamedStep(name!, step.Index));
        if (form is { At: { } at, AtPlace: { } place })
            pins.Add(new Pin(step.Index, at, place));
        if (form.Pace is { } pace)
            paces.Add(new StepPace(step.Index, pace));
        steps.Add(step);
    }

    /// <summary>A name of a scheme's step that no other step of the route has, so that a scheme can be followed twice.</summary>
    private string OwnName(string name)
    {
        var own = name;
        for (var number = 2; !namesInUse.Add(own); number++)
            own = FormattableString.Invariant($"{name} {number}");
        return own;
    }
}
