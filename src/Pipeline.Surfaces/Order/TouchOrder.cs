using Pipeline.Abstractions;
using Pipeline.Surfaces.Deeds;

namespace Pipeline.Surfaces.Order;

/// <summary>
/// Which steps of a route keep their order: those that touch a common area, those of which one masks, unmasks or joins what the other
/// touches, sprays and the masks of the same part, and what the file says. A route is a program, areas are its registers; for each
/// register the last step that touched it is remembered, so a route of any length costs one pass.
/// </summary>
internal sealed class TouchOrder
{
    private readonly Dictionary<string, int> lastOnArea = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> lastOfMask = new(StringComparer.Ordinal);
    private readonly Dictionary<string, PartTable> parts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> partOfArea = new(StringComparer.Ordinal);
    private readonly List<StepOrder> orders = [];
    private readonly List<(int Step, Reason Reason)> candidates = [];
    private readonly ulong[][] ancestors;

    private TouchOrder(Model model, int steps)
    {
        ancestors = new ulong[steps][];
        foreach (var area in model.Areas)
            partOfArea[area.Name] = area.Part;
    }

    /// <summary>The pairs that keep their order, transitively reduced, by later step and then earlier.</summary>
    public static Sequence<StepOrder> Of(Model model, IReadOnlyList<Moment> moments)
    {
        var order = new TouchOrder(model, moments.Count);
        foreach (var moment in moments)
            order.Take(moment);
        return order.orders.ToSequence();
    }

    private void Take(Moment moment)
    {
        candidates.Clear();
        var step = moment.Step;
        TouchAreas(moment);
        foreach (var deed in step.Deeds)
        {
            switch (deed)
            {
                case Deed.Join join:
                    TouchAll(Preparing.AreasOf(moment.Model, join.Parts), step.Index, "a join holds {0}");
                    TouchAll(join.Hides, step.Index, "a join hides {0}");
                    break;
                case Deed.PutMaskOn mask:
                    TouchMask(mask.Mask, step.Index);
                    TouchParts(step.Areas, step.Index, isSpray: false);
                    break;
                case Deed.TakeMaskOff mask:
                    var under = Masking.AreasUnder(moment.Before, mask.Mask);
                    TouchMask(mask.Mask, step.Index);
                    TouchAll(under, step.Index, "a mask comes off {0}");
                    TouchParts(step.Areas, step.Index, isSpray: false);
                    TouchParts(under, step.Index, isSpray: false);
                    break;
            }
        }

        if (Laying.IsSprayed(step))
            TouchParts(step.Areas, step.Index, isSpray: true);
        foreach (var earlier in step.After)
        {
            if (earlier >= 0 && earlier < step.Index)
                candidates.Add((earlier, new Reason("the file says so", "")));
        }

        Keep(step.Index);
    }

    private void TouchAreas(Moment moment)
    {
        foreach (var area in moment.Step.Areas)
            Touch(area, moment.Step.Index, "both touch {0}");
        foreach (var area in moment.Overspray)
            Touch(area, moment.Step.Index, "overspray reaches {0}");
    }

    private void TouchAll(Sequence<string> areas, int step, string why)
    {
        foreach (var area in areas)
            Touch(area, step, why);
    }

    private void Touch(string area, int step, string why)
    {
        if (lastOnArea.TryGetValue(area, out var earlier) && earlier != step)
            candidates.Add((earlier, new Reason(why, area)));
        lastOnArea[area] = step;
    }

    private void TouchMask(string mask, int step)
    {
        if (lastOfMask.TryGetValue(mask, out var earlier) && earlier != step)
            candidates.Add((earlier, new Reason("both handle the mask {0}", mask)));
        lastOfMask[mask] = step;
    }

    private void TouchParts(Sequence<string> areas, int step, bool isSpray)
    {
        foreach (var area in areas)
        {
            var part = partOfArea[area];
            if (!parts.TryGetValue(part, out var table))
                parts.Add(part, table = new PartTable());
            table.Take(step, isSpray, earlier => candidates.Add((earlier, new Reason("masks and spray on {0}", part))));
        }
    }

    // Keeps the candidates that no other candidate already implies. Ancestors are bit sets; each step holds those before it.
    private void Keep(int step)
    {
        var mine = ancestors[step] = new ulong[(step + 63) / 64];
        candidates.Sort((left, right) => right.Step.CompareTo(left.Step));
        var firstKept = orders.Count;
        foreach (var (earlier, reason) in candidates)
        {
            if (IsSet(mine, earlier))
                continue;
            Set(mine, earlier);
            var theirs = ancestors[earlier];
            for (var i = 0; i < theirs.Length; i++)
                mine[i] |= theirs[i];
            orders.Add(new StepOrder(earlier, step, reason.InWords()));
        }

        orders.Reverse(firstKept, orders.Count - firstKept);
    }

    private static bool IsSet(ulong[] bits, int index) => (bits[index >> 6] & (1UL << (index & 63))) != 0;

    private static void Set(ulong[] bits, int index) => bits[index >> 6] |= 1UL << (index & 63);

    private readonly record struct Reason(string Why, string What)
    {
        public string InWords() => Why.Replace("{0}", What, StringComparison.Ordinal);
    }

    /// <summary>
    /// Sprays and mask steps of one part. Among themselves sprays touch common areas anyway and masks need no order;
    /// each spray comes after the masks handled since the spray before it, each mask step after the last spray.
    /// </summary>
    private sealed class PartTable
    {
        private readonly List<int> masksSinceSpray = [];
        private int lastSpray = -1;

        public void Take(int step, bool isSpray, Action<int> comesAfter)
        {
            if (lastSpray >= 0 && lastSpray != step)
                comesAfter(lastSpray);
            if (!isSpray)
            {
                if (masksSinceSpray.Count == 0 || masksSinceSpray[^1] != step)
                    masksSinceSpray.Add(step);
                return;
            }

            if (lastSpray == step)
                return;
            foreach (var mask in masksSinceSpray)
            {
                if (mask != step)
                    comesAfter(mask);
            }

            masksSinceSpray.Clear();
            lastSpray = step;
        }
    }
}
