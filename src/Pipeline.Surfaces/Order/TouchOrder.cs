using Pipeline.Abstractions;
using Pipeline.Surfaces.Deeds;

namespace Pipeline.Surfaces.Order;

/// <summary>
/// Which steps of a route keep their order: those that touch a common area, those of which one masks, unmasks or joins what the other
/// touches, sprays and the masks of the same piece, and what the file says. A route is a program, areas are its registers; for each
/// register the last step that touched it is remembered, so a route of any length costs one pass.
/// </summary>
internal sealed class TouchOrder
{
    private readonly Dictionary<string, int> lastOnArea = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> lastOfMask = new(StringComparer.Ordinal);
    private readonly Dictionary<string, PieceTable> tables = new(StringComparer.Ordinal);
    private readonly List<StepOrder> orders = [];
    private readonly List<(int Step, Reason Reason)> candidates = [];
    private readonly ulong[][] ancestors;

    private TouchOrder(int steps) => ancestors = new ulong[steps][];

    /// <summary>The pairs that keep their order, transitively reduced, by later step and then earlier.</summary>
    public static Sequence<StepOrder> Of(IReadOnlyList<Moment> moments)
    {
        var order = new TouchOrder(moments.Count);
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
                    TouchAll(Held(moment, join), step.Index, "a join holds {0}");
                    TouchAll(join.Hides, step.Index, "a join hides {0}");
                    break;
                case Deed.PutMaskOn mask:
                    TouchMask(mask.Mask, step.Index);
                    TouchPieces(step.Areas, moment, isSpray: false);
                    break;
                case Deed.TakeMaskOff mask:
                    var under = Masking.AreasUnder(moment.Before, mask.Mask);
                    TouchMask(mask.Mask, step.Index);
                    TouchAll(under, step.Index, "a mask comes off {0}");
                    TouchPieces(step.Areas, moment, isSpray: false);
                    TouchPieces(under, moment, isSpray: false);
                    break;
            }
        }

        if (Laying.IsSprayed(step))
            TouchPieces(step.Areas, moment, isSpray: true);
        foreach (var earlier in step.After)
        {
            if (earlier >= 0 && earlier < step.Index)
                candidates.Add((earlier, new Reason("the file says so", "")));
        }

        Keep(step.Index);
    }

    // all of the piece the join makes, what is joined to its parts already as well: from now on spray on one area reaches them all
    private static Sequence<string> Held(Moment moment, Deed.Join join)
    {
        var next = moment.Step.Index + 1;
        var joined = Preparing.AreasOf(moment.Model, join.Parts);
        return moment.Model.Areas.Select(area => area.Name).Where(area => moment.Pieces.IsBeside(area, joined, next)).ToSequence();
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

    // a join comes after all that was done to the parts, so what their tables held before it needs no carrying over
    private void TouchPieces(Sequence<string> areas, Moment moment, bool isSpray)
    {
        foreach (var area in areas)
        {
            var piece = moment.Pieces.PieceOf(area, moment.Step.Index);
            if (!tables.TryGetValue(piece, out var table))
                tables.Add(piece, table = new PieceTable());
            table.Take(moment.Step.Index, isSpray, earlier => candidates.Add((earlier, new Reason("masks and spray on {0}", PartsOf(moment, piece)))));
        }
    }

    private static string PartsOf(Moment moment, string piece) => string.Join(" and ", moment.Model.Areas
        .Where(area => moment.Pieces.PieceOf(area.Name, moment.Step.Index) == piece)
        .Select(area => area.Part)
        .Distinct());

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
    /// Sprays and mask steps of one piece. Among themselves sprays touch common areas anyway and masks need no order;
    /// each spray comes after the masks handled since the spray before it, each mask step after the last spray.
    /// </summary>
    private sealed class PieceTable
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
