using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Engine;
using Pipeline.Planning;
using Pipeline.Scheduling;
using Pipeline.Surfaces;
using Pipeline.Tests.Units.House;
using Pipeline.Workflows;
using PlanTable = Pipeline.Planning.Timetable;

namespace Pipeline.Tests.Units.Planning;

/// <summary>
/// The law of going on: whenever a painter stops at the end of a sitting with all of it done, what is left is planned where it was, or is
/// finished no later; and what was done and what is left are together a schedule of the whole batch, by the auditor.
/// </summary>
public class DoneLawTests
{
    private static readonly Instant From = Instant.FromUtc(2026, 11, 30, 18, 0);

    [Theory]
    [InlineData("workflows/first.yaml")]
    [InlineData("workflows/tidewater.yaml")]
    [InlineData("workflows/harbour-fair.yaml")]
    public void What_is_left_stays_and_the_whole_passes_the_auditor(string file)
    {
        var walked = Stages.Check([new SourceText(file, File.ReadAllText(Path.Combine(Repository.Root, file)))], Check.Trade).Walked!;
        var first = Found(walked, new PlanRequest(From, SearchEffort.Quick));
        var plan = PlanLayOut.Of(first, Check.Trade, done: null);
        var written = WrittenPlan.Of(plan);

        foreach (var cut in plan.Days.SelectMany(day => day.Sittings).Select(sitting => sitting.To.ToInstant()).Distinct())
        {
            var request = new PlanRequest(cut, SearchEffort.Quick, Keep: written, Done: cut);
            var rest = Found(walked, request);
            var laid = PlanLayOut.Of(rest, Check.Trade, request.DoneWork);
            var both = PlanComparison.Of(written, WrittenPlan.Of(laid));

            var isSooner = rest.Clock.InstantAt(rest.Planned.Score.Finish) <= first.Clock.InstantAt(first.Planned.Score.Finish);
            (both.Moves.IsEmpty || isSooner).Should().BeTrue($"what is left after {cut} stays, or is finished no later: {both.Moves.Count} moved");
            (both.Added.Count, both.Gone.Count).Should().Be((0, 0), $"after {cut}");
            laid.Findings.Where(finding => finding is { Level: not Level.Note, Silenced: null }).Should().BeEmpty($"after {cut}");
            Auditor.Audit(first.Posed.Problem, Whole(first, rest, cut)).Should().BeEmpty($"done until {cut}, and the rest");
        }
    }

    private static PlanTable Found(Walked walked, PlanRequest request) =>
        new Attempt(walked, request, walked.Batch.Pace, CancellationToken.None).AsAsked(new Pacing(walked, walked.Batch.Pace)).Should().BeOfType<Trial.Found>().Which.Table;

    // What hands had done by then as it was, and everything else as the second plan has it, all by the clock of the first.
    private static Schedule Whole(PlanTable first, PlanTable rest, Instant cut)
    {
        var later = first.Clock.TickAt(rest.Clock.Origin);
        var until = first.Clock.TickAt(cut);
        var runs = first.Runs.Where(run => run.Worker >= 0 && run.End <= until)
            .Concat(rest.Runs.Where((run, r) => run.Worker < 0 || !rest.IsPast(r)).Select(run => run with { Start = run.Start + later }));
        var closeDowns = first.Planned.Schedule.CloseDowns.Where(close => close.Start < until)
            .Concat(rest.Planned.Schedule.CloseDowns.Select(close => close with { Start = close.Start + later }));
        return new Schedule([.. runs.OrderBy(run => run.Start)], [.. closeDowns.OrderBy(close => close.Start)]);
    }
}
