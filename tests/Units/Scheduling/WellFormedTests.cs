using Pipeline.Scheduling;
using static Pipeline.Tests.Scheduling.Given;

namespace Pipeline.Tests.Scheduling;

/// <summary>What the caller put together wrongly is refused by name, before any search.</summary>
public class WellFormedTests
{
    private const long TooFar = (1L << 48) + 1;

    private static readonly Tool Tool = Airbrush(cleanOut: 5);

    private static readonly Problem Right = Problem(Worker((0, 100)), [Task("a", 10, units: 2), Task("b", 10, units: 2)], After(0, 1)) with
    {
        Tools = [Tool],
        Places = [new Place("rack", 2)],
        Dues = [new Due(1, 90)],
    };

    [Fact]
    public void The_right_one_is_planned() => Plan(Right).Score.Finish.Should().Be(40);

    public static TheoryData<string> Wrong => [.. Cases.Keys];

    private static readonly Dictionary<string, (Problem Problem, string Because)> Cases = new()
    {
        ["cap"] = (Right with { Workers = [Right.Workers[0] with { MostPerDay = -1 }] }, "negative cap"),
        ["interval"] = (Right with { Workers = [Worker((0, TooFar))] }, "interval out of range"),
        ["tool count"] = (With(Tool with { Count = 0 }), "count below one"),
        ["clean-outs"] = (With(Tool with { CleanOut = [[0]] }), "not one per pair"),
        ["fills"] = (With(Tool with { Fill = [0] }), "not one per load"),
        ["close-downs"] = (With(Tool with { CloseDown = [0] }), "not one per load"),
        ["clean-out time"] = (With(Tool with { CleanOut = [[0, -1], [5, 0]] }), "time out of range"),
        ["same load"] = (With(Tool with { CleanOut = [[1, 5], [5, 0]] }), "must cost nothing"),
        ["place"] = (Right with { Places = [new Place("rack", -1)] }, "negative capacity"),
        ["units"] = (With(Task("a", 10, units: 0)), "no units"),
        ["work"] = (With(Task("a", -1, units: 2)), "time out of range"),
        ["not before"] = (With(Task("a", 10, units: 2) with { NotBefore = TooFar }), "time out of range"),
        ["pin"] = (With(Task("a", 10, units: 2) with { PinnedStart = -TooFar }), "time out of range"),
        ["worker"] = (With(Task("a", 10, units: 2) with { Workers = [1] }), "names no worker"),
        ["no workers"] = (Right with { Workers = [] }, "there are no workers"),
        ["tool"] = (With(Task("a", 10, units: 2) with { Tool = new ToolUse(1, 0) }), "names no tool"),
        ["load"] = (With(Task("a", 10, units: 2) with { Tool = new ToolUse(0, 2) }), "names no load"),
        ["no place"] = (With(Task("a", 10, units: 2) with { Places = [new PlaceUse(1, 1, 0)] }), "names no place"),
        ["amount"] = (With(Task("a", 10, units: 2) with { Places = [new PlaceUse(0, -1, 0)] }), "negative amount"),
        ["place twice"] = (With(Task("a", 10, units: 2) with { Places = [new PlaceUse(0, 1, 0), new PlaceUse(0, 1, 5)] }), "a place twice"),
        ["past order"] = (With(Task("a", 10, units: 2) with { Past = [new Run(0, 1, 1, 0, -1, -20, 0, 0, 10, 0)] }), "not in unit order"),
        ["past worker"] = (With(Task("a", 10, units: 2) with { Past = [new Run(0, 0, 1, 3, -1, -20, 0, 0, 10, 0)] }), "past run names no worker"),
        ["past tool"] = (With(Task("a", 10, units: 2) with { Tool = new ToolUse(0, 0), Past = [new Run(0, 0, 1, 0, 1, -20, 0, 0, 10, 0)] }), "past run names no tool"),
        ["past units"] = (With(Task("a", 10, units: 2) with { Past = [new Run(0, 0, 3, 0, -1, -30, 0, 0, 30, 0)] }), "more units are done"),
        ["wait"] = (Right with { Waits = [After(0, 2)] }, "names no activity"),
        ["wait out of range"] = (Right with { Waits = [After(0, 1, TooFar)] }, "out of range"),
        ["hold"] = (Right with { Waits = [After(0, 1) with { HoldWeight = double.NaN }] }, "hold weight"),
        ["due"] = (Right with { Dues = [new Due(2, 90)] }, "names no activity"),
        ["due weight"] = (Right with { Dues = [new Due(1, 90, -1)] }, "weight"),
        ["due out of range"] = (Right with { Dues = [new Due(1, TooFar)] }, "out of range"),
        ["aims"] = (Right with { Aims = [Aim.FewChanges, Aim.FewChanges] }, "named twice"),
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_malformed_problem_is_refused(string what)
    {
        var (problem, because) = Cases[what];
        FluentActions.Invoking(() => Solver.Solve(problem, Effort.Quick)).Should().Throw<ArgumentException>().WithMessage($"*{because}*");
    }

    [Theory]
    [InlineData(2, 0, 0, 10, "names no activity")]
    [InlineData(0, -1, 0, 10, "units or a start out of range")]
    [InlineData(0, 0, TooFar, 10, "units or a start out of range")]
    [InlineData(0, 0, 0, -1, "not a number of zero or more")]
    public void What_is_to_be_kept_is_looked_at_too(int activity, int first, long start, double price, string because)
    {
        var keep = new Keep(new Schedule([new Run(activity, first, 1, 0, -1, start, 0, 0, 10, 0)], []), price);
        FluentActions.Invoking(() => Solver.Solve(Right, Effort.Quick, 1, null, keep, threads: 1)).Should().Throw<ArgumentException>().WithMessage($"*{because}*");
    }

    private static Problem With(Tool tool) => Right with { Tools = [tool] };

    private static Problem With(Activity activity) => Right with { Activities = [activity, Right.Activities[1] with { Units = activity.Units }] };
}
