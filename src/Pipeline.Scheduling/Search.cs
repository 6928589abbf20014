using System.Collections.Immutable;

namespace Pipeline.Scheduling;

/// <summary>One whole search: checks, first plans, better plans, bound, audit, reasons.</summary>
internal sealed class Search(Problem problem, Effort effort, int seed, IProgress<SolveProgress>? progress, Keep? keep, int threads)
{
    private const int MostDispatches = 60;

    // Below, the order of runs is soon searched through, and the keys need not be.
    private const int FewActivities = 130;

    // A project need not be dispatched at all; the exact solver may find what this does not.
    private const int MostFailures = 2;

    // A dispatched run is looked for in many gaps; it takes about as long as timing ten.
    private const int WorkPerDispatched = 10;

    // Where places fill up, a change is timed to the very end: beyond so many units each one is dearer in proportion.
    private const int UnitsCheapWithPlaces = 150;

    // Beyond so many pieces a proof is out of reach: where lots may be parted anywhere, and where only as they are.
    private const int MostPiecesExact = 60;
    private const int MostPiecesAsParted = 160;

    // A schedule that is less late is sooner found than a proof.
    private const int MostPiecesLessLate = 100;

    // Where there is a choice of hands or tools, or a cap on a day, it soon takes as long as a proof.
    private const int MostPiecesLessLateShared = 50;

    private readonly Scoring scoring = new(problem, keep);
    private Schedule? best;
    private Timetable? bestTable;
    private Score bestScore;
    private bool isBestAsParted;
    private long work;
    private bool canPlacesFill;
    private int refused;
    private Fault? firstFault;

    /// <summary>Runs to be timed, in all: so many per unit at first, and no more than so many.</summary>
    private long Budget => Math.Min(MostWork, OwnBudget);

    /// <summary>A cap on that, for those who want many answers rather than good ones.</summary>
    public long MostWork { get; init; } = long.MaxValue;

    private long OwnBudget => !canPlacesFill ? Placements : Placements * UnitsCheapWithPlaces / Math.Max(Units, UnitsCheapWithPlaces);

    private long Placements => effort switch
    {
        Effort.Quick => Math.Clamp(2_500L * Units, 100_000, 2_000_000),
        Effort.Usual when canPlacesFill => Math.Min(60_000_000, 40_000L * Units),
        Effort.Usual => Math.Min(120_000_000, 400_000L * Units),
        _ => Math.Min(360_000_000, 600_000L * Units),
    };

    // In the exact solver's own units.
    private double ExactBudget => MostWork < long.MaxValue ? 0.01 : effort switch
    {
        Effort.Quick => 0.1,
        Effort.Usual => 3,
        _ => 15,
    };

    private int Units => problem.Activities.Sum(a => a.Units);

    public Outcome Run(CancellationToken cancel)
    {
        var net = new Net(problem);
        canPlacesFill = net.HasStays;
        if (Feasibility.Of(net) is { IsEmpty: false } obstacles)
            return new Outcome.Impossible(obstacles);
        var components = new Components(net);
        var rings = Heads.Of(net, components, hours: null);
        if (rings.Obstacle is { } ring)
            return new Outcome.Impossible([ring]);
        var hours = new Hours(net);
        var heads = Heads.Of(net, components, hours);
        if (heads.Obstacle is { } late)
            return new Outcome.Impossible([late]);
        var bound = new LowerBound(net, components, hours, heads);
        var dispatcher = new Dispatcher(net, components, heads);
        var tasks = Tasks.In(net);
        var obstacle = FirstPlans(net, components, heads, dispatcher, bound, tasks is not null, cancel);
        if (tasks is not null)
        {
            var project = new ProjectSearch(tasks, effort, seed, threads, bound.Finish, starts => Offer(tasks.ToTimetable(starts), bound), cancel);
            project.Run(bestTable?.Starts);
            work += project.Work;
            if (project.IsImpossible)
                return new Outcome.Impossible([new Obstacle.ProvedImpossible()]);
            if (best is null)
                return new Outcome.Impossible(NotFound(obstacle));
            bound.Prove(project.Bound);
            return Finish(net, bound, cancel.IsCancellationRequested);
        }

        if (best is null)
            return new Outcome.Impossible(NotFound(obstacle));
        bound.Sharpen(bestScore.Finish);
        var onlyFinish = problem.Dues.IsEmpty && keep is null && problem.Aims is [Aim.FinishSoon];
        if (onlyFinish && Exactly(net, heads, bound, cancel))
            return Finish(net, bound, cancel.IsCancellationRequested);
        var ground = new Ground(net, components, heads, new Haste(net, bound, new OpenTime(net, Enumerable.Range(0, problem.Workers.Length), once: true)));
        Better(net, ground, bound, cancel);
        LessLate(net, heads, ground, bound, cancel);
        if (onlyFinish || !Exactly(net, heads, bound, cancel))
            ExactlyAsParted(net, heads, bound, cancel);
        if (keep is null)
            Press(net);
        return Finish(net, bound, cancel.IsCancellationRequested);
    }

    // Small ones to proof. True if nothing finishes sooner than the best.
    private bool Exactly(Net net, Heads heads, LowerBound bound, CancellationToken cancel)
    {
        if (bestScore.Finish <= bound.Finish)
            return true;
        var parts = LotParts.Anywhere(net);
        if (parts.Count > MostPiecesExact || AskExactly(net, parts, heads, bound, ExactBudget, cancel) is not { } answer)
            return false;
        bound.Prove(answer);
        return bestScore.Finish <= bound.Finish;
    }

    // Those a little larger at least with the lots parted as they are; a plan that is late is not there to be proved.
    private void ExactlyAsParted(Net net, Heads heads, LowerBound bound, CancellationToken cancel)
    {
        if (bestScore.Lateness > 0 || bestScore.Finish <= bound.Finish)
            return;
        var parts = LotParts.AsIn(net, best!);
        if (parts.Count > MostPiecesAsParted || AskExactly(net, parts, heads, bound, ExactBudget / 2, cancel) is not { } answer)
            return;
        isBestAsParted = answer >= bestScore.Finish;
        // where no lot could be parted otherwise, that holds for every schedule
        if (parts.Count == LotParts.Anywhere(net).Count)
            bound.Prove(answer);
    }

    // What is late may only be so because several things would have to change at once.
    private void LessLate(Net net, Heads heads, Ground ground, LowerBound bound, CancellationToken cancel)
    {
        if (bestScore.Lateness <= 0 || bestScore.HardLateness > 0 || cancel.IsCancellationRequested || !ExactBatch.Covers(net))
            return;
        var parts = LotParts.Anywhere(net);
        if (parts.Count > (ExactBatch.IsShared(net) ? MostPiecesLessLateShared : MostPiecesLessLate))
            parts = LotParts.AsIn(net, best!);
        if (parts.Count > MostPiecesAsParted)
            return;
        // what is in time may take until it must be, and some of what is not so heavy be later still
        var until = Math.Max(bestScore.Finish, problem.Dues.Max(due => due.By - due.Afterwards));
        if (ExactBatch.LessLate(net, parts, heads.Starts, bound.LatestStarts(until), bound.Finish, until, best!, 2 * ExactBudget, seed, cancel) is not { } schedule)
            return;
        Offer(schedule, table: null, bound);
        var walks = new Annealing(ground, keep, seed, threads);
        walks.Improve(InOrder.Of(best!, ground), Budget / 4, slots => Offer(InOrder.ToTimetable(net, slots), bound), cancel);
        work += walks.Work;
    }

    // Takes what finishes sooner; the answer is when nothing with such parts does.
    private long? AskExactly(Net net, LotParts parts, Heads heads, LowerBound bound, double budget, CancellationToken cancel)
    {
        if (!problem.Aims.Contains(Aim.FinishSoon) || cancel.IsCancellationRequested || !ExactBatch.Covers(net))
            return null;
        var answer = ExactBatch.Better(net, parts, heads.Starts, bound.LatestStarts(bestScore.Finish - 1), bound.Finish, (best!, bestScore.Finish), budget, seed, cancel);
        if (answer.Schedule is { } schedule)
            Offer(schedule, table: null, bound);
        return answer.Bound;
    }

    // Nobody is to sit about between two tasks, or come home later than need be.
    private void Press(Net net)
    {
        if (!ExactBatch.Covers(net))
            return;
        var pressed = Pressed.Of(net, best!);
        var score = scoring.Of(pressed);
        if (scoring.Compare(score, bestScore) <= 0 && Auditor.Audit(problem, pressed).Count == 0)
            (best, bestScore) = (pressed, score);
    }

    private Obstacle? FirstPlans(Net net, Components components, Heads heads, Dispatcher dispatcher, LowerBound bound, bool isProject, CancellationToken cancel)
    {
        foreach (var table in keep is null ? [] : KeptStarts.Of(problem, keep))
            Offer(table, bound);
        Obstacle? obstacle = null;
        var random = new Random(seed);
        var units = bound.LatestStarts(bound.Finish);
        var latest = Enumerable.Range(0, net.Count).Select(a => (double)units[net.Offset[a]]).ToArray();
        var furthest = latest.Select(Math.Abs).DefaultIfEmpty(0).Max();
        for (var i = 0; i < (best is null && isProject ? MostFailures : MostDispatches) && (best is null || (work < Budget / 10 && !cancel.IsCancellationRequested)); i++)
        {
            var noise = i == 0 ? 0 : 0.02 * i;
            // as long as there is none, what is as urgent as another changes places with it, too
            var mixing = best is null ? noise * furthest : 0;
            var keys = latest.Select(t => Jittered(t, noise, mixing, random)).ToArray();
            var table = dispatcher.Fill(new Dispatch(keys, PartingWorth: i % 3 == 0 ? 0.5 : i % 3 == 1 ? 1e9 : 0));
            obstacle = dispatcher.Obstacle ?? obstacle;
            if (table is null)
                continue;
            work += WorkPerDispatched * table.Work;
            Offer(table, bound);
        }

        if (isProject || !net.Attended.Contains(true))
            return obstacle;
        var sittings = new FilledSittings(net, components, heads, latest, seed, threads);
        sittings.Try(Budget / 20, table => Offer(table, bound), cancel);
        if (keep is null)
            sittings.Improve(net.Count < FewActivities ? Budget / 8 : Budget * 5 / 6, table => Offer(table, bound), cancel);
        work += sittings.Work;
        return obstacle;
    }

    private static double Jittered(double key, double share, double span, Random random)
    {
        var luck = random.NextDouble() - 0.5;
        return (key * (1 + (share * luck))) + (span * luck);
    }

    // What stood in the way of the last try is a hint, no proof.
    private ImmutableArray<Obstacle> NotFound(Obstacle? hint) =>
        firstFault is not null ? throw new InvalidOperationException($"Every schedule that was made is wrong: {firstFault.Kind}: {firstFault.Text}")
        : hint is null ? [new Obstacle.NotFound()] : [hint, new Obstacle.NotFound()];

    private void Better(Net net, Ground ground, LowerBound bound, CancellationToken cancel)
    {
        if (keep is not null && new Walk(ground, new Pricing(ground, keep), seed) is var earlier && earlier.StartFrom(KeptOrder.Of(keep, bestTable!, ground)))
            Offer(InOrder.ToTimetable(net, earlier.Best!), bound);
        var annealing = new Annealing(ground, keep, seed, threads);
        annealing.Improve(InOrder.Of(bestTable!, ground), (Budget - work) / 2, slots => Offer(InOrder.ToTimetable(net, slots), bound), cancel);
        work += annealing.Work;
    }

    private void Offer(Timetable table, LowerBound bound) => Offer(WriteDown.Of(table), table, bound);

    private void Offer(Schedule schedule, Timetable? table, LowerBound bound)
    {
        var score = scoring.Of(schedule);
        if (best is not null && scoring.Compare(score, bestScore) >= 0)
            return;
        // a fault of one part of the search costs that part its schedule, and nobody the plan
        if (Auditor.Audit(problem, schedule) is [var fault, ..])
        {
            refused++;
            firstFault ??= fault;
            return;
        }

        best = schedule;
        bestTable = table ?? bestTable;
        bestScore = score;
        progress?.Report(new SolveProgress(score, bound.Finish, work, Budget));
    }

    private Outcome Finish(Net net, LowerBound bound, bool stoppedEarly)
    {
        var explanation = new Explanation(net, best!);
        var planned = new Outcome.Planned(
            best!,
            bestScore,
            bound.Against(bestScore, isBestAsParted),
            explanation.Reasons,
            explanation.CriticalRuns(),
            explanation.Finishes(),
            stoppedEarly,
            work)
        { Refused = refused };
        if (bestScore.HardLateness == 0)
            return planned;
        var missed = new List<Obstacle>();
        for (var d = 0; d < problem.Dues.Length; d++)
        {
            var due = problem.Dues[d];
            var finish = planned.Finishes[due.Activity].Finish + due.Afterwards;
            if (due.IsHard && finish > due.By)
                missed.Add(new Obstacle.HardDueMissed(d, finish, bound.EarliestFinish(due.Activity) + due.Afterwards));
        }

        return new Outcome.Impossible([.. missed], planned);
    }
}
