using NodaTime;
using Pipeline.Abstractions;

namespace Pipeline.Planning;

/// <summary>
/// What to mix in one sitting. A mix is mixed once for as many tasks as its pot life allows, counted from the first task that uses it, whoever
/// of those who sit there does them: a second mix never matches the first (common practice). A task that ends later gets a fresh one.
/// </summary>
internal static class MixOrders
{
    // Less than this cannot be measured by drops.
    private const double LeastMillilitres = 0.5;

    /// <summary>For each painter the mixes to make, and the tasks with the mix they take their paint from.</summary>
    /// <param name="sitting">The painters of the sitting by name, each with the tasks in order of start.</param>
    /// <param name="paints">Paints and mixes by name.</param>
    public static IReadOnlyList<(Sequence<MixOrder> Mixes, Sequence<PlannedTask> Tasks)> Of(
        IReadOnlyList<(string Painter, IReadOnlyList<PlannedTask> Tasks)> sitting, IReadOnlyDictionary<string, Paint> paints)
    {
        var mixes = sitting.Select(_ => new List<Mixed>()).ToList();
        var changed = sitting.Select(at => at.Tasks.ToList()).ToList();
        var open = new Dictionary<string, Mixed>(StringComparer.Ordinal);
        var inOrder = sitting.SelectMany((at, who) => at.Tasks.Select((task, i) => (Task: task, Who: who, Index: i))).OrderBy(at => at.Task.ExactStart).ThenBy(at => at.Who);
        foreach (var (task, who, i) in inOrder)
        {
            if (task.Paint is not { } use || !paints.TryGetValue(use.Name, out var paint) || paint.Recipe is null)
                continue;
            if (!open.TryGetValue(use.Name, out var mix) || (mix.UseBy is { } by && task.To.ToInstant() > by.ToInstant()))
            {
                var useBy = paint.PotLife is { } life ? task.From.Plus(Duration.FromMinutes(Math.Floor(life.Minutes))) : (ZonedDateTime?)null;
                open[use.Name] = mix = new Mixed(paint, who, mixes[who].Count, useBy);
                mixes[who].Add(mix);
            }

            mix.Add(sitting[who].Painter, use.Millilitres);
            changed[who][i] = task with { Paint = use with { FromMix = mix.Index, MixedBy = mix.By == who ? null : sitting[mix.By].Painter } };
        }

        return [.. mixes.Select((made, who) => (made.Select(mix => mix.Order(sitting[who].Painter)).ToSequence(), changed[who].ToSequence()))];
    }

    private sealed class Mixed(Paint paint, int by, int index, ZonedDateTime? useBy)
    {
        private readonly List<string> takers = [];
        private double millilitres;

        /// <summary>Who mixes it, by position.</summary>
        public int By => by;

        /// <summary>Which of that painter's mixes it is.</summary>
        public int Index => index;

        public ZonedDateTime? UseBy => useBy;

        public void Add(string painter, double more)
        {
            takers.Add(painter);
            millilitres += more;
        }

        // Rounded up to half a mL: nobody measures finer, and a little more is better than a little less.
        public MixOrder Order(string painter)
        {
            var volume = Math.Max(LeastMillilitres, Math.Ceiling((millilitres * 2) - 1e-9) / 2);
            return new MixOrder(paint.Name, volume, Mixing.Parts(paint.Recipe!, volume), useBy) { AlsoFor = takers.Where(taker => taker != painter).Distinct().ToSequence() };
        }
    }
}
