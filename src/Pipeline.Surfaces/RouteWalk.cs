using Pipeline.Abstractions;
using Pipeline.Surfaces.Deeds;
using Pipeline.Surfaces.Lifecycle;
using Pipeline.Workflows;

namespace Pipeline.Surfaces;

/// <summary>One route from its first step to its last.</summary>
internal static class RouteWalk
{
    /// <summary>A bare surface for every area of a model.</summary>
    public static SurfaceMap Bare(Model model) =>
        new(model.Areas.Select(area => KeyValuePair.Create(area.Name, new Surface { Material = model.MaterialOf(area) })));

    /// <summary>The moments of a route's steps, in file order.</summary>
    public static List<Moment> Moments(Route route, Batch batch, ModelLifecycle lifecycle)
    {
        lifecycle.Restart();
        var moments = new List<Moment>(route.Steps.Count);
        var surfaces = Bare(route.Model);
        var pieces = new Pieces(route.Model, route.Steps);
        foreach (var step in route.Steps)
        {
            var overspray = Laying.Overspray(surfaces, step, route.Model, pieces);
            var after = StepOnSurfaces.After(surfaces, step, route.Model, overspray);
            var passage = lifecycle.Take(new Situation(step, surfaces, after, step.Index == route.Steps.Count - 1));
            moments.Add(new Moment
            {
                Model = route.Model,
                Route = route.Steps,
                Step = step,
                Before = surfaces,
                After = after,
                Passage = passage,
                Overspray = overspray,
                Pieces = pieces,
                Shelf = batch.Paints,
                Tables = batch.Tables,
                Climate = batch.Bench.Climate,
                Protection = step.Protection.Over(batch.Bench.Protection),
            });
            surfaces = after;
        }

        return moments;
    }

    /// <summary>Every mask from on to off, in order of putting on.</summary>
    public static Sequence<MaskSpan> Masks(IReadOnlyList<Moment> moments)
    {
        var spans = new List<MaskSpan>();
        foreach (var moment in moments)
        {
            foreach (var deed in moment.Step.Deeds)
            {
                if (deed is Deed.PutMaskOn on)
                    spans.Add(new MaskSpan(on.Mask, on.Material, moment.Step.Areas, moment.Step.Index, null));
                else if (deed is Deed.TakeMaskOff off)
                    End(spans, off.Mask, moment.Step.Index);
            }
        }

        return spans.ToSequence();
    }

    private static void End(List<MaskSpan> spans, string mask, int step)
    {
        for (var i = spans.Count - 1; i >= 0; i--)
        {
            if (spans[i].OffStep is null && spans[i].Name == mask)
                spans[i] = spans[i] with { OffStep = step };
        }
    }
}
