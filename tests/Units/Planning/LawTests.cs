using System.Text.RegularExpressions;
using CsCheck;
using NodaTime;
using NodaTime.Text;
using Pipeline.Abstractions;
using Pipeline.Planning;
using static Pipeline.Tests.Units.Planning.RouteSteps;

namespace Pipeline.Tests.Units.Planning;

/// <summary>
/// Laws of whole plans, on small random batches walked, posed, solved and laid out for real. The solver's auditor judges every one of
/// them besides. Planning costs more than judging, so every plan is judged by all laws.
/// </summary>
public class LawTests
{
    private const int Batches = 50;

    private static readonly Paint[] Pots =
    [
        Pot("slate", Lacquer, "#4a4f55"), Pot("chalk", Waterborne, "#eeece4"), Pot("brass", Metallic, "#b58b3b"),
        Mix("thin slate", Pot("slate", Lacquer, "#4a4f55"), 40), Pot("boot", Waterborne, "#2b2a28"),
    ];

    private sealed record Coat(int Paint, bool Sprayed, int Area, double Minutes, bool Masked, int Coats);

    private sealed record Piece(int Count, double CleanMinutes, Coat[] Coats, bool Photographed);

    private sealed record Case(Piece[] Pieces, int Painters, int Airbrushes, int Rack, double Air, double Humidity, int EveningMinutes)
    {
        public override string ToString() => $"{Painters} painters, {Airbrushes} airbrushes, rack {Rack}, {Air} °C {Humidity} %, {EveningMinutes} min: "
            + string.Join(" | ", Pieces.Select(p => $"{p.Count} × [{p.CleanMinutes}; {string.Join("; ", p.Coats.Select(c => c.ToString()))}; {p.Photographed}]"));

        public Workshop Workshop()
        {
            var end = new LocalTime(18, 0).PlusMinutes(EveningMinutes);
            var workshop = Planning.Workshop.In()
                .Weekly("Mon Tue Wed Thu Fri Sat Sun", "18:00", FormattableString.Invariant($"{end.Hour:00}:{end.Minute:00}"))
                .Tool("airbrush", Airbrushes).Tool("drying rack", Rack).Air(Air, Humidity, Air - 2, Humidity + 5);
            for (var i = 0; i < Painters; i++)
                workshop.Painter($"painter {i + 1}");
            for (var p = 0; p < Pieces.Length; p++)
            {
                var piece = Pieces[p];
                workshop.Model($"Piece {p + 1}", piece.Count, r => Route(r, piece), due: p == 0 ? "2026-12-20 18:00" : null);
            }

            return workshop;
        }

        private static void Route(RouteSteps route, Piece piece)
        {
            route.Clean(piece.CleanMinutes);
            string[] areas = ["suit", "boots"];
            for (var c = 0; c < piece.Coats.Length; c++)
            {
                var coat = piece.Coats[c];
                if (coat.Masked)
                    route.Mask($"mask {c}", areas[1 - coat.Area]);
                if (coat.Sprayed)
                    route.Spray(Pots[coat.Paint], areas[coat.Area], coat.Minutes, coat.Coats).DryBetween();
                else
                    route.Brush(Pots[coat.Paint], areas[coat.Area], coat.Minutes, coat.Coats).DryBetween();
                if (coat.Masked)
                    route.Unmask($"mask {c}");
            }

            if (piece.Photographed)
                route.Photograph();
        }
    }

    private static readonly Gen<Coat> GenCoat = Gen.Select(Gen.Int[0, Pots.Length - 1], Gen.Bool, Gen.Int[0, 1], Gen.Int[1, 16], Gen.Int[0, 3], Gen.Int[1, 6])
        .Select((paint, sprayed, area, halfMinutes, masked, coats) => new Coat(paint, sprayed, area, halfMinutes / 2.0, masked == 0, Math.Max(1, coats - 3)));

    private static readonly Gen<Piece> GenPiece = Gen.Select(Gen.Int[1, 5], Gen.Int[0, 8], GenCoat.Array[0, 4], Gen.Bool)
        .Select((count, clean, coats, photographed) => new Piece(count, clean / 2.0, coats, photographed));

    private static readonly Gen<Case> GenCase = Gen.Select(GenPiece.Array[1, 3], Gen.Int[1, 2], Gen.Int[1, 2], Gen.Int[2, 15], Gen.Int[16, 26], Gen.Int[40, 75], Gen.Int[110, 240])
        .Select((pieces, painters, airbrushes, rack, air, humidity, evening) => new Case(pieces, painters, airbrushes, rack, air, humidity, evening));

    private static readonly Regex UntilThen = new("until (?<time>... \\d+ ... ..:..)(; this is the next sitting|(?<left>, and after that too little was left))", RegexOptions.ExplicitCapture);
    private static readonly LocalDateTimePattern Said = LocalDateTimePattern.CreateWithInvariantCulture("ddd d MMM HH:mm");

    private static readonly (string Name, Action<Workshop, Plan> Law)[] Laws =
    [
        ("a comfortable plan breaks no wait", (_, plan) =>
            plan.Findings.Where(f => f.Level != Level.Note && f.Rule is not null).Should().BeEmpty()),
        ("nobody does two things at once", (_, plan) =>
            Apart(plan.Days.SelectMany(d => d.Sittings).GroupBy(s => s.Painter).Select(mine => mine.SelectMany(s => s.Tasks)))),
        ("a tool is used by one at a time", (_, plan) => Apart(Tasks(plan).Where(t => t.Tool is not null).GroupBy(t => t.Tool))),
        ("every task lies within its sitting", (_, plan) =>
            plan.Days.SelectMany(d => d.Sittings).Should().OnlyContain(sitting => !sitting.Tasks.IsEmpty && sitting.Tasks.All(t => IsWithin(t, sitting)))),
        ("every unit gets every coat of every step once", EveryUnitOnce),
        ("no coat begins before the one under it says it may", CoatsDryBetween),
        ("a mask comes off after it goes on, and in time", MasksPair),
        ("a mix holds what its tasks take", (_, plan) =>
        {
            foreach (var sitting in plan.Days.SelectMany(d => d.Sittings))
            {
                var together = plan.Days.SelectMany(d => d.Sittings).Where(other => other.From == sitting.From).ToList();
                for (var m = 0; m < sitting.Mixes.Count; m++)
                {
                    var taken = together.SelectMany(other => other.Tasks.Where(t => t.Paint?.FromMix == m && (t.Paint.MixedBy ?? other.Painter) == sitting.Painter)).Sum(t => t.Paint!.Millilitres);
                    sitting.Mixes[m].Millilitres.Should().BeInRange(taken - 1e-9, taken + 0.5 + 1e-9);
                }
            }
        }),
        ("every reason is a sentence", (_, plan) => Tasks(plan).Should().OnlyContain(t => t.WhyNotEarlier.EndsWith('.') && t.WhyNotEarlier.Length > 10)),
        ("what is left drying dries on after the last hands are done", (_, plan) =>
        {
            foreach (var together in plan.Days.SelectMany(d => d.Sittings).GroupBy(sitting => sitting.From))
                together.SelectMany(sitting => sitting.Drying).Where(left => left.Until.ToInstant() < together.Max(sitting => sitting.Tasks[^1].To.ToInstant())).Should().BeEmpty();
        }),
        ("the sum in the head is the sum of the sittings, and theirs that of the tasks", (_, plan) =>
        {
            plan.Measure.AttendedMinutes.Should().Be(plan.Days.SelectMany(d => d.Sittings).Sum(sitting => sitting.AttendedMinutes));
            plan.Days.SelectMany(d => d.Sittings).Should().OnlyContain(sitting => sitting.AttendedMinutes == sitting.Tasks.Sum(task => (task.To - task.From).TotalMinutes));
        }),
        ("no reason names a wait that ended in an earlier sitting with room left", WaitsLeaveTooLittle),
        ("an evening left early says why, if more is to be done by that painter", EarlyIsSaid),
    ];

    [Fact]
    public void Every_plan_keeps_every_law() => GenCase.Sample(
        batch =>
        {
            var workshop = batch.Workshop();
            if (workshop.Outcome() is not PlanOutcome.Planned { Plan: var plan })
                return;
            foreach (var (name, law) in Laws)
            {
                using var scope = new FluentAssertions.Execution.AssertionScope(name);
                law(workshop, plan);
            }
        },
        iter: Batches,
        threads: 1);

    [Fact]
    public void Most_small_batches_can_be_planned()
    {
        // the masks of some contradict what has to dry under them
        var (planned, all) = (0, 0);
        GenCase.Sample(
            batch =>
            {
                all++;
                planned += batch.Workshop().Outcome() is PlanOutcome.Planned ? 1 : 0;
            },
            iter: Batches / 2,
            threads: 1);
        planned.Should().BeGreaterThan(all / 2);
    }

    [Fact]
    public void The_same_batch_gives_the_same_plan() => GenCase.Sample(
        batch =>
        {
            if (batch.Workshop().Outcome() is PlanOutcome.Planned first)
                ((PlanOutcome.Planned)batch.Workshop().Outcome()).Plan.Days.Should().Equal(first.Plan.Days);
        },
        iter: Batches / 5,
        threads: 1);

    [Fact]
    public void What_is_left_after_any_moment_is_planned_and_nothing_is_done_twice() => Gen.Select(GenCase, Gen.Int[0, 1000], Gen.Int[0, 3], Gen.Bool).Sample(
        (batch, share, minutes, isNextDay) =>
        {
            var workshop = batch.Workshop();
            if (workshop.Outcome() is not PlanOutcome.Planned { Plan: var plan })
                return;
            var steps = Tasks(plan).Where(task => task.Sort == TaskSort.Step).ToList();
            if (steps.Count == 0)
                return;
            var cut = steps[share * (steps.Count - 1) / 1000].To.ToInstant() + Duration.FromMinutes(minutes);
            var from = isNextDay ? cut + Duration.FromDays(1) : cut;
            var outcome = Planner.Plan(workshop.Walked(), Workshop.Trade([]), new PlanRequest(from, SearchEffort.Quick, Keep: WrittenPlan.Of(plan), Done: cut));

            var why = (outcome as PlanOutcome.NoPlan)?.Reasons.Select(finding => finding.Message) ?? [];
            var rest = outcome.Should().BeOfType<PlanOutcome.Planned>($"after {cut}: {string.Join("; ", why)}").Which.Plan;
            var left = Tasks(rest).Where(task => task.Sort == TaskSort.Step).ToList();
            left.Where(task => task.From.ToInstant() < from).Should().BeEmpty();
            rest.Done!.Tasks.SelectMany(task => task.Pieces).Concat(left.SelectMany(task => Enumerable.Range(task.FirstUnit, task.Units).Select(unit => (task.Model, task.Step, task.Coat, unit)))).Order()
                .Should().Equal(steps.SelectMany(task => Enumerable.Range(task.FirstUnit, task.Units).Select(unit => (task.Model, task.Step, task.Coat, unit))).Order());
            foreach (var (name, law) in Laws.Where(law => !rest.Days.IsEmpty && LawsOfTheRest.Contains(law.Name)))
            {
                using var scope = new FluentAssertions.Execution.AssertionScope(name);
                law(workshop, rest);
            }

            // the same work is under the hands, apart from what must be set up or cleaned once more
            rest.Finishes.Select(finish => finish.Model).Should().Equal(plan.Finishes.Select(finish => finish.Model));
            rest.Finishes.Should().OnlyContain(finish => finish.Ready.ToInstant() >= finish.LastTask.ToInstant());
        },
        iter: Batches,
        threads: 1);

    private static readonly string[] LawsOfTheRest =
    [
        "nobody does two things at once",
        "a tool is used by one at a time",
        "every task lies within its sitting",
        "no coat begins before the one under it says it may",
        "a mix holds what its tasks take",
        "every reason is a sentence",
        "what is left drying dries on after the last hands are done",
        "the sum in the head is the sum of the sittings, and theirs that of the tasks",
    ];

    // Sittings come every day, and nothing of them is kept free.
    private static void WaitsLeaveTooLittle(Workshop workshop, Plan plan)
    {
        foreach (var (sitting, task) in plan.Days.SelectMany(d => d.Sittings).SelectMany(sitting => sitting.Tasks.Select(task => (sitting, task))))
        {
            if (UntilThen.Match(task.WhyNotEarlier) is not { Success: true } said)
                continue;
            var until = Near(said.Groups["time"].Value, task.From);
            var (from, to) = (sitting.From.PlusHours(-24), sitting.To.PlusHours(-24));
            if (!said.Groups["left"].Success)
            {
                until.ToInstant().Should().BeGreaterThanOrEqualTo(to.ToInstant(), task.WhyNotEarlier).And.BeLessThanOrEqualTo(sitting.From.ToInstant().Plus(Duration.FromMinutes(20)), task.WhyNotEarlier);
                continue;
            }

            // the time told is the last unit's: the first may begin as much earlier as the task is long
            until.ToInstant().Should().BeInRange(from.ToInstant(), to.ToInstant(), task.WhyNotEarlier);
            var closing = plan.Days.SelectMany(d => d.Sittings).SelectMany(s => s.Tasks).Where(t => t.Sort == TaskSort.CloseDown && t.Tool == task.Tool).Select(t => t.To - t.From).DefaultIfEmpty(Duration.Zero).Max();
            (to - until).Should().BeLessThan(task.To - task.From + closing + Duration.FromMinutes(1), task.WhyNotEarlier);
        }
    }

    private static ZonedDateTime Near(string said, ZonedDateTime task) => new[] { task.Year - 1, task.Year }
        .Select(year => Said.WithTemplateValue(new LocalDateTime(year, 1, 1, 0, 0)).Parse(said))
        .Where(parsed => parsed.Success).Select(parsed => parsed.Value.InZoneLeniently(task.Zone))
        .Where(time => time.ToInstant() <= task.ToInstant() + Duration.FromMinutes(20)).MaxBy(time => time.ToInstant());

    private static void EarlyIsSaid(Workshop workshop, Plan plan)
    {
        var sittings = plan.Days.SelectMany(d => d.Sittings).ToList();
        foreach (var sitting in sittings.Where(sitting => sitting.To - sitting.Tasks[^1].To > Duration.FromMinutes(21)))
            (sitting.Free is not null).Should().Be(sittings.Exists(later => later.From.ToInstant() >= sitting.To.ToInstant() && later.Tasks.Any(task => task.Sort == TaskSort.Step)), sitting.From.ToString());
    }

    private static IEnumerable<PlannedTask> Tasks(Plan plan) => plan.Days.SelectMany(d => d.Sittings).SelectMany(s => s.Tasks);

    private static bool IsWithin(PlannedTask task, PlannedSitting sitting) =>
        task.From.ToInstant() >= sitting.From.ToInstant() && task.To.ToInstant() <= sitting.To.ToInstant();

    private static void EveryUnitOnce(Workshop workshop, Plan plan)
    {
        var tasks = Tasks(plan).Where(t => t.Sort == TaskSort.Step).ToLookup(t => t.Place);
        foreach (var route in workshop.Walked().Batch.Routes)
        {
            foreach (var (step, coat) in route.Steps.SelectMany(step => Enumerable.Range(1, step.Work.Passes).Select(coat => (step, coat))))
                tasks[step.Place].Where(t => t.Coat == coat).SelectMany(t => Enumerable.Range(t.FirstUnit, t.Units)).Order().Should().Equal(Enumerable.Range(1, route.Model.Count));
        }
    }

    // The times told are those of the last unit of a task; the next coat is judged where its task ends with the same one.
    private static void CoatsDryBetween(Workshop workshop, Plan plan)
    {
        var steps = workshop.Walked().Batch.Routes.SelectMany(route => route.Steps).ToDictionary(step => step.Place);
        var coats = Tasks(plan).Where(t => t.OfCoats > 1).ToLookup(t => (t.Place, t.Coat));
        foreach (var (task, next) in coats.SelectMany(same => same).SelectMany(t => coats[(t.Place, t.Coat + 1)].Where(next => next.FirstUnit + next.Units == t.FirstUnit + t.Units).Select(next => (t, next))))
        {
            var begun = next.To.ToInstant() - Duration.FromMinutes(steps[next.Place!].Work.PerUnit.Minutes);
            var dry = task.Starts.Single(wait => wait.For == FormattableString.Invariant($"coat {next.Coat}")).Comfortable.ToInstant();
            begun.Should().BeGreaterThanOrEqualTo(dry - Duration.FromMinutes(1));
        }
    }

    private static void MasksPair(Workshop workshop, Plan plan)
    {
        foreach (var mask in plan.Masks)
        {
            mask.Off.ToInstant().Should().BeGreaterThan(mask.On.ToInstant());
            if (mask.MustBeOffBy is { } by)
                mask.Off.ToInstant().Should().BeLessThanOrEqualTo(by.ToInstant());
        }
    }

    private static void Apart(IEnumerable<IEnumerable<PlannedTask>> groups)
    {
        foreach (var group in groups)
        {
            var end = Instant.MinValue;
            foreach (var task in group.OrderBy(t => t.From.ToInstant()).ThenBy(t => t.To.ToInstant()))
            {
                task.From.ToInstant().Should().BeGreaterThanOrEqualTo(end, task.Words);
                end = task.To.ToInstant();
            }
        }
    }
}
