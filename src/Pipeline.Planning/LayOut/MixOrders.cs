using NodaTime;
using Pipeline.Abstractions;

namespace Pipeline.Planning;

/// <summary>
/// What to mix in one sitting. A mix is mixed once for as many tasks as its pot life allows, counted from the first task that uses it;
/// a task that ends later gets a fresh one.
/// </summary>
internal static class MixOrders
{
    // Less than this cannot be measured by drops.
    private const double LeastMillilitres = 0.5;

    /// <summary>The mixes, and the tasks with the index of the mix they take their paint from.</summary>
    public static (Sequence<MixOrder> Mixes, Sequence<PlannedTask> Tasks) Of(IReadOnlyList<PlannedTask> tasks, IReadOnlyDictionary<string, Paint> paints)
    {
        var mixes = new List<(Paint Paint, double Millilitres, ZonedDateTime? UseBy)>();
        var open = new Dictionary<string, int>(StringComparer.Ordinal);
        var changed = new List<PlannedTask>();
        foreach (var task in tasks)
        {
            if (task.Paint is not { } use || !paints.TryGetValue(use.Name, out var paint) || paint.Recipe is null)
            {
                changed.Add(task);
                continue;
            }

            if (!open.TryGetValue(use.Name, out var index) || (mixes[index].UseBy is { } by && task.To.ToInstant() > by.ToInstant()))
            {
                index = mixes.Count;
                open[use.Name] = index;
                mixes.Add((paint, 0, paint.PotLife is { } life ? task.From.Plus(Duration.FromMinutes(Math.Floor(life.Minutes))) : null));
            }

            mixes[index] = mixes[index] with { Millilitres = mixes[index].Millilitres + use.Millilitres };
            changed.Add(task with { Paint = use with { FromMix = index } });
        }

        return (mixes.Select(mix => Order(mix.Paint, mix.Millilitres, mix.UseBy)).ToSequence(), changed.ToSequence());
    }

    // Rounded up to half a mL: nobody measures finer, and a little more is better than a little less.
    private static MixOrder Order(Paint paint, double millilitres, ZonedDateTime? useBy)
    {
        var volume = Math.Max(LeastMillilitres, Math.Ceiling((millilitres * 2) - 1e-9) / 2);
        return new MixOrder(paint.Name, volume, Mixing.Parts(paint.Recipe!, volume), useBy);
    }
}
