using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Planning;

namespace Pipeline.Reports;

/// <summary>One sitting: what to take out and mix, the tasks with a box to tick, and what to look at before leaving.</summary>
internal sealed class SittingText(Page page, Plan plan)
{
    private const string Deep = "           ";
    private const int LabelCells = 9;

    private readonly ILookup<string, Finding> beside = PlanFacts.Beside(plan);
    private readonly CautionsTold cautions = new();
    private readonly bool hasSeveralPainters = plan.Days.SelectMany(day => day.Sittings).Select(s => s.Painter).Distinct().Count() > 1;

    public void Set(LocalDate date, PlannedSitting sitting)
    {
        page.Blank();
        page.Rule('=');
        var painter = hasSeveralPainters ? $"   {Visible.Line(sitting.Painter)}" : "";
        page.Ends(
            $"{Moments.Day(date).ToUpperInvariant()}   {Moments.Span(sitting.From, sitting.To)}{painter}",
            Tone.Heading,
            new Run(PlanFacts.Filled(sitting)));
        page.Rule('-');
        SetBefore(date, sitting);
        string? why = null;
        foreach (var task in sitting.Tasks)
        {
            page.Blank();
            SetTask(date, task, why);
            why = PlanFacts.WhyNow(task, why) is null ? why : task.WhyNotEarlier;
        }

        SetLeaving(date, sitting);
    }

    private void SetBefore(LocalDate date, PlannedSitting sitting)
    {
        var label = Label("Take out");
        foreach (var line in PlanFacts.TakeOut(sitting))
        {
            page.Hung(label, Visible.Line(line));
            label = new Run(Deep);
        }

        foreach (var mix in sitting.Mixes)
        {
            page.Hung(
                Label("Mix"),
                Mixes.Head(mix, date),
                Tone.Strong);
            var measures = Mixes.Measures(mix);
            Columns.Set(page, Deep.Length + 2, [new(""), new(""), new("", true), new("", true)], [.. mix.Parts.Select((part, i) => (IReadOnlyList<Run>)
            [
                Amounts.Parts(part.Parts),
                Visible.Line(part.Name),
                measures[i],
                Amounts.Drops(part.Drops),
            ])]);
        }

        var (news, known) = cautions.Of(sitting);
        foreach (var caution in news)
            page.Hung(Label("Mind"), Visible.Line($"{Amounts.Words(caution.Name)}: {caution.Text}"));
        if (known.Count > 0)
            page.Hung(Label("Mind"), $"as before: {string.Join(", ", known)}");
    }

    private void SetTask(LocalDate date, PlannedTask task, string? whyBefore)
    {
        page.Hung(
            new Run($"[ ] {Moments.Time(task.From)}  "),
            Amounts.Capital(Visible.Line(task.Words)),
            Tone.Strong,
            new Run(Cells.Right(Amounts.Counted(Moments.Minutes(task.From, task.To), "min", "min"), 7)));
        foreach (var finding in beside[task.Id])
            page.Hung(new Run($"{Deep}! ", finding.Level.Tone()), Sentence(finding));
        if (Using(task) is { Length: > 0 } use)
            page.Hung(Deep, use);
        if (task.CleanOutBefore is { } clean)
            page.Hung(Sub("clean"), PlanFacts.CleanFirst(task, clean));
        if (task.LoadedUntil is { } until)
            page.Hung(Sub("then"), PlanFacts.StandsLoaded(task, until));
        SetWaits(date, task);
        if (task.NotLaterThan is { } latest)
            page.Hung(Sub("start by"), Moments.From(date, latest), Tone.Warning);
        if (PlanFacts.WhyNow(task, whyBefore) is { } why)
            page.Hung(Sub("why now"), Visible.Line(why), Tone.Quiet);
        if (task.Note is { Length: > 0 } note)
            page.Hung(Sub("note"), Visible.Line(note));
    }

    private void SetWaits(LocalDate date, PlannedTask task)
    {
        if (task.Starts.IsEmpty)
            return;
        Columns.Set(page, Deep.Length, [new(""), new(""), new(""), new("")], [.. task.Starts.Select((wait, i) => (IReadOnlyList<Run>)
        [
            new Run(Cells.Left(i == 0 ? "wait" : "", LabelCells - 2), Tone.Quiet),
            Visible.Line(wait.For),
            PlanFacts.Earliest(wait, date),
            PlanFacts.Better(wait, date),
        ])]);
    }

    private static string Using(PlannedTask task)
    {
        var words = task.Words;
        var parts = new List<string>();
        if (task.Model.Length > 0)
            parts.Add(Amounts.Units(task));
        if (task.Paint is { } paint)
        {
            var name = words.Contains(paint.Name, StringComparison.OrdinalIgnoreCase) ? "" : $" {Visible.Line(paint.Name)}";
            parts.Add($"{Amounts.Volume(paint.Millilitres)}{name}{(paint.Loads > 0 ? $", {Amounts.Counted(paint.Loads, "cup")}" : "")}{Visible.Line(Mixes.MixedBy(paint))}");
        }

        if (task.Tool is { } tool && !words.Contains(tool, StringComparison.OrdinalIgnoreCase))
            parts.Add(Visible.Line(tool));
        return string.Join(" | ", parts);
    }

    private void SetLeaving(LocalDate date, PlannedSitting sitting)
    {
        if (sitting.Drying.IsEmpty && sitting.MasksOn.IsEmpty && sitting.Free is null)
            return;
        page.Blank();
        page.Line(new Run("Before leaving", Tone.Strong));
        Columns.Set(page, 2, [new(""), new(""), new("")],
        [
            .. sitting.Drying.Select(left => (IReadOnlyList<Run>)
            [
                "drying",
                $"{Visible.Line(left.Model)}: {Visible.Line(left.What)}",
                $"{Visible.Line(left.For)} {Moments.From(date, left.Until)}",
            ]),
            .. sitting.MasksOn.Select(mask => (IReadOnlyList<Run>)
            [
                "masked",
                $"{Visible.Line(mask.Model)}: {Visible.Line(mask.Mask)}",
                $"off {Moments.From(date, mask.ComesOff)}{(mask.MustBeOffBy is { } by ? $", at the latest {Moments.From(date, by)}" : "")}",
            ]),
        ]);
        if (sitting.Free is { } free)
            page.Hung("  free    ", PlanFacts.Free(free));
    }

    private static string Sentence(Finding finding) =>
        Visible.Line(finding.Remedy is { Length: > 0 } remedy ? $"{Amounts.Stopped(finding.Message)} {remedy}" : finding.Message);

    private static Run Label(string word) => new(Cells.Left(word, Deep.Length), Tone.Quiet);

    private static Run Sub(string word) => new(Deep + Cells.Left(word, LabelCells), Tone.Quiet);
}
