using Pipeline.Scheduling;
using static Pipeline.Tests.Scheduling.Given;

namespace Pipeline.Tests.Scheduling;

/// <summary>Every kind of fault, made by hand in a schedule that was right, is found.</summary>
public class AuditorTests
{
    private static readonly Problem Batch = new()
    {
        Workers = [Worker((0, 100), (200, 300)) with { MostPerDay = 90 }, Worker((0, 100), (200, 300))],
        Tools = [Airbrush(cleanOut: 10, fill: 2, closeDown: 5)],
        Places = [new Place("rack", 2)],
        Activities =
        [
            Task("a", 10, units: 2, setUp: 5, unattended: 20) with { Workers = [0], Tool = new ToolUse(0, 0), Places = [new PlaceUse(0, 1, 0)] },
            Task("b", 10, units: 2) with { Workers = [0], Tool = new ToolUse(0, 1), NotBefore = 20 },
            Task("c", 10) with { Workers = [1], PinnedStart = 250 },
            Task("d", 10, units: 2) with { Workers = [1], Past = [new Run(3, 0, 1, 1, -1, -20, 0, 0, 10, 0)] },
            Task("e", 10, unattended: 30) with { Workers = [1], Places = [new PlaceUse(0, 2, 0)] },
        ],
        Waits = [After(0, 1, 0, 40)],
    };

    private static readonly Schedule Right = new(
        [
            new Run(3, 0, 1, 1, -1, -20, 0, 0, 10, 0),
            new Run(0, 0, 2, 0, 0, 0, 2, 5, 20, 0),
            new Run(3, 1, 1, 1, -1, 0, 0, 0, 10, 0),
            new Run(1, 0, 2, 0, 0, 40, 10, 0, 20, 0),
            new Run(4, 0, 1, 1, -1, 60, 0, 0, 10, 0),
            new Run(2, 0, 1, 1, -1, 250, 0, 0, 10, 0),
        ],
        [new CloseDown(0, 0, 1, 0, 70, 5)]);

    [Fact]
    public void The_right_one_has_no_fault() => Auditor.Audit(Batch, Right).Should().BeEmpty();

    public static TheoryData<FaultKind, string> Wrong => new()
    {
        { FaultKind.Units, "missing" },
        { FaultKind.Units, "twice" },
        { FaultKind.Figures, "set-up" },
        { FaultKind.Past, "past" },
        { FaultKind.OpenHours, "night" },
        { FaultKind.WorkerTwice, "overlap" },
        { FaultKind.WrongWorker, "worker" },
        { FaultKind.WrongWorker, "nobody's worker" },
        { FaultKind.Cap, "cap" },
        { FaultKind.Cap, "cap of two sittings" },
        { FaultKind.Least, "too soon" },
        { FaultKind.Greatest, "too late" },
        { FaultKind.ToolTwice, "tool" },
        { FaultKind.CleanOut, "clean-out" },
        { FaultKind.CloseDown, "no close-down" },
        { FaultKind.CloseDown, "late close-down" },
        { FaultKind.CloseDown, "closed down and taken up again" },
        { FaultKind.Place, "rack" },
        { FaultKind.Pin, "pin" },
        { FaultKind.NotBefore, "before" },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_fault_is_found(FaultKind kind, string how)
    {
        var (problem, schedule) = how switch
        {
            "missing" => (Batch, Right with { Runs = Right.Runs.RemoveAt(3) }),
            "twice" => (Batch, Right with { Runs = Right.Runs.Add(Right.Runs[4]) }),
            "set-up" => (Batch, With(1, r => r with { SetUp = 4 })),
            "past" => (Batch, With(0, r => r with { Start = -30 })),
            "night" => (Batch, With(5, r => r with { Start = 150 })),
            "overlap" => (Batch, With(4, r => r with { Start = 5 })),
            "worker" => (Batch, With(4, r => r with { Worker = 0 })),
            "nobody's worker" => (Batch, With(4, r => r with { Worker = -2, Start = 5000 })),
            "cap of two sittings" => (Batch with { Workers = Batch.Workers.SetItem(1, Days(19, [(0, 100), (200, 300)])) }, Right),
            "cap" => (Batch with { Workers = Batch.Workers.SetItem(0, Batch.Workers[0] with { MostPerDay = 60 }) }, Right),
            "too soon" => (Batch, With(3, r => r with { Start = 21 })),
            "too late" => (Batch, With(3, r => r with { Start = 70 })),
            "tool" => (Batch, With(3, r => r with { Start = 26 })),
            "clean-out" => (Batch, With(3, r => r with { Start = 45, CleanOut = 5 })),
            "no close-down" => (Batch, Right with { CloseDowns = [] }),
            "late close-down" => (Batch, Right with { CloseDowns = [Right.CloseDowns[0] with { Start = 96 }] }),
            "closed down and taken up again" => (Batch, With(3, r => r with { CleanOut = 2 }) with { CloseDowns = [new CloseDown(0, 0, 0, 0, 30, 5), Right.CloseDowns[0]] }),
            "rack" => (Batch, With(4, r => r with { Start = 30 })),
            "pin" => (Batch, With(5, r => r with { Start = 240 })),
            _ => (Batch with { Activities = Batch.Activities.SetItem(1, Batch.Activities[1] with { NotBefore = 41 }) }, Right),
        };
        Auditor.Audit(problem, schedule).Select(f => f.Kind).Should().Contain(kind);
    }

    private static Schedule With(int run, Func<Run, Run> change) => Right with { Runs = Right.Runs.SetItem(run, change(Right.Runs[run])) };
}
