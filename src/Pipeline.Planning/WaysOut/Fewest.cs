namespace Pipeline.Planning;

/// <summary>Some of what could be done, and the plan made with it.</summary>
/// <param name="Members">What is done.</param>
/// <param name="Table">The plan.</param>
/// <param name="IsLeast">True if it was tried that leaving any one of them out is later; false if there were plans left for that.</param>
internal sealed record Chosen<T>(IReadOnlyList<T> Members, Timetable Table, bool IsLeast);

/// <summary>
/// Looks for few of many things that together get a late batch done in time, or where that cannot be as early as all of them do: one after
/// another where the plan waits for one, else evenly from all of them; then whatever can be left out of these again is.
/// </summary>
/// <param name="all">All that could be done, in a fixed order.</param>
/// <param name="plan">The batch planned with some of them; null if there is no plan, or no more are to be tried.</param>
/// <param name="wanted">Those a plan waits for, what helps most first.</param>
internal sealed class Fewest<T>(IReadOnlyList<T> all, Func<IReadOnlyList<T>, Timetable?> plan, Func<Timetable, IEnumerable<T>> wanted)
    where T : notnull
{
    private const int MostRounds = 4;
    private const int TriesInRound = 3;

    // what all of them together leave late
    private int goal;

    /// <summary>Those with which it is as little late as with all of them, at most so many single ones to choose from; none where that changes nothing.</summary>
    /// <param name="late">The plan that is late.</param>
    /// <param name="choices">How many single ones are worth telling.</param>
    /// <param name="known">The plan with all of them, if it has been made.</param>
    public IEnumerable<Chosen<T>> Of(Timetable late, int choices, Timetable? known = null)
    {
        if (all.Count == 0 || (known ?? plan(all)) is not { } most)
            yield break;
        goal = Replanning.MostLate(most);
        if (goal >= Replanning.MostLate(late))
            yield break;
        if (all.Count == 1)
        {
            yield return new Chosen<T>(all, most, IsLeast: true);
            yield break;
        }

        var found = OneByOne(late, choices);
        if (found is not [{ Members.Count: 1 }, ..])
            found = [LeftOut(found.Count > 0 ? found[0] : Spread(most))];
        foreach (var few in found)
            yield return few;
    }

    private bool IsEnough(Timetable table) => Replanning.MostLate(table) <= goal;

    // What helps most is kept, and the next is looked for in the plan made with it.
    private List<Chosen<T>> OneByOne(Timetable late, int choices)
    {
        var found = new List<Chosen<T>>();
        IReadOnlyList<T> kept = [];
        var table = late;
        for (var round = 0; round < MostRounds && found.Count == 0; round++)
        {
            (IReadOnlyList<T> Members, Timetable Table)? nearest = null;
            foreach (var next in wanted(table).Where(each => all.Contains(each) && !kept.Contains(each)).Distinct().Take(TriesInRound))
            {
                var members = InOrder(kept.Append(next));
                if (plan(members) is not { } tried)
                    continue;
                if (IsEnough(tried))
                    found.Add(new Chosen<T>(members, tried, IsLeast: members.Count == 1));
                else if (nearest is null || Replanning.MostLate(tried) < Replanning.MostLate(nearest.Value.Table))
                    nearest = (members, tried);
                if (found.Count == (round == 0 ? choices : 1))
                    return found;
            }

            if (nearest is not var (better, its) || Replanning.MostLate(its) >= Replanning.MostLate(table))
                break;
            (kept, table) = (better, its);
        }

        return found;
    }

    // By halving, how few are enough of those spread over all.
    private Chosen<T> Spread(Timetable most)
    {
        var best = new Chosen<T>(all, most, IsLeast: false);
        var (low, high) = (1, all.Count);
        while (low < high && plan(Evenly((low + high) / 2)) is { } table)
        {
            if (IsEnough(table))
                (best, high) = (new Chosen<T>(Evenly((low + high) / 2), table, IsLeast: false), (low + high) / 2);
            else
                low = ((low + high) / 2) + 1;
        }

        return best;
    }

    // Half of them at a time, then fewer, then one by one, until none can be left out any more.
    private Chosen<T> LeftOut(Chosen<T> some)
    {
        var (members, table) = (some.Members, some.Table);
        var tried = new HashSet<string>(StringComparer.Ordinal);
        for (var many = members.Count / 2; members.Count > 1; many = Math.Max(1, many / 2))
        {
            var before = members.Count;
            for (var i = 0; i < members.Count && members.Count > 1;)
            {
                var rest = members.Where((_, at) => at < i || at >= i + many).ToList();
                if (rest.Count == 0 || !tried.Add(string.Join(' ', rest.Select(each => Place(each)))))
                {
                    i += many;
                    continue;
                }

                if (plan(rest) is not { } without)
                    return new Chosen<T>(members, table, IsLeast: false);
                if (IsEnough(without))
                    (members, table) = (rest, without);
                else
                    i += many;
            }

            if (many == 1 && members.Count == before)
                break;
        }

        return new Chosen<T>(members, table, IsLeast: true);
    }

    private List<T> InOrder(IEnumerable<T> some) => [.. some.OrderBy(Place)];

    private int Place(T one)
    {
        for (var i = 0; i < all.Count; i++)
        {
            if (all[i].Equals(one))
                return i;
        }

        return all.Count;
    }

    // So many, from all over them.
    private List<T> Evenly(int number) => [.. Enumerable.Range(0, number).Select(i => all[((2 * i) + 1) * all.Count / (2 * number)])];
}
