using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>One drying time the file gives; without a time, the state is never reached.</summary>
internal readonly record struct LabelTime(DryingState State, DryingRange? Time);

/// <summary>Reads <c>drying</c>: times by drying state.</summary>
internal static class DryingBinder
{
    /// <summary>The states by their keys.</summary>
    public static readonly (string Key, DryingState State)[] States =
        [.. Enum.GetValues<DryingState>().Select(state => (WordText.Kebab(state.ToString()), state))];

    // What no coating does the other way round. Recoatable and handleable have no turn: an enamel bears the hand before it bears a coat.
    private static readonly (DryingState Sooner, DryingState Later)[] InTurn =
    [
        (DryingState.TouchDry, DryingState.Recoatable),
        (DryingState.TouchDry, DryingState.Handleable),
        (DryingState.Handleable, DryingState.MaskSafe),
        (DryingState.Handleable, DryingState.WashSafe),
        (DryingState.Recoatable, DryingState.Cured),
        (DryingState.MaskSafe, DryingState.Cured),
        (DryingState.WashSafe, DryingState.Cured),
    ];

    private static readonly string Keys = string.Join(", ", States.Select(state => state.Key));

    /// <summary>The times in a mapping of states; a single time is refused, since it does not say what is reached by then.</summary>
    public static List<LabelTime> Bind(Desk desk, SyntaxNode node)
    {
        var times = new List<LabelTime>();
        if (node is TextNode { IsMissing: false } single)
        {
            var shown = DurationText.Range(Desk.Plain(single.Text)).Wrong is null ? single.Text : "12-24 h";
            desk.Error(node, $"‘{NumberText.Shown(single.Text)}’ does not say which state is reached by then.", $"Name the state: drying: {{ recoatable: {shown} }}; possible are {Keys}.");
            return times;
        }

        if (desk.Mapping(node, $"times by state, such as {{ recoatable: 30 min, mask-safe: 12-24 h }}; states are {Keys}") is not { } mapping)
            return times;
        foreach (var (key, value) in mapping.Entries)
        {
            if (StateOf(key.Text) is not { } state)
                desk.UnknownKey(key, "drying", States.Select(known => known.Key));
            else if (value is TextNode { Text: "never" })
                times.Add(new LabelTime(state, null));
            else if (desk.Says(value, DurationText.Range, DurationText.RangeExpected + ", or never", out var time))
                times.Add(new LabelTime(state, time));
        }

        CheckOrder(desk, mapping, times);
        return times;
    }

    // Said where one time lies beyond the other with both its figures; ranges that overlap are how labels are.
    private static void CheckOrder(Desk desk, MappingNode mapping, List<LabelTime> times)
    {
        foreach (var (sooner, later) in InTurn)
        {
            if (TimeOf(sooner) is { } first && TimeOf(later) is { } second && first.Low > second.High)
            {
                var (early, late) = (WordText.Kebab(sooner.ToString()), WordText.Kebab(later.ToString()));
                desk.Error(
                    mapping[early]!,
                    $"A coat is {early} before it is {late}, and {first} is longer than {second}.",
                    "See the label again: the two may have been swapped.",
                    new Related(mapping[late]!.Place, $"the time to {late}"));
            }
        }

        DryingRange? TimeOf(DryingState state) => times.Find(time => time.State == state).Time is { } time && mapping[WordText.Kebab(state.ToString())] is not null ? time : null;
    }

    /// <summary>A table with the file's times in place of its own.</summary>
    public static DryingTable With(this DryingTable table, List<LabelTime> times)
    {
        foreach (var (state, time) in times)
            table = table.With(state, time);
        return table;
    }

    private static DryingState? StateOf(string key)
    {
        foreach (var (known, state) in States)
        {
            if (known == key)
                return state;
        }

        return null;
    }
}
