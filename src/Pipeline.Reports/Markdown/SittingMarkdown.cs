using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Planning;

namespace Pipeline.Reports;

/// <summary>One sitting in Markdown.</summary>
internal sealed class SittingMarkdown(MarkdownText page, Plan plan)
{
    private readonly ILookup<string, Finding> beside = PlanFacts.Beside(plan);
    private readonly CautionsTold cautions = new();
    private readonly bool hasSeveralPainters = plan.Days.SelectMany(day => day.Sittings).Select(s => s.Painter).Distinct().Count() > 1;

    public void Set(LocalDate date, PlannedSitting sitting)
    {
        var painter = hasSeveralPainters ? $", {MarkdownText.Escaped(sitting.Painter)}" : "";
        page.Heading(2, $"{Moments.Day(date)}, {Moments.Span(sitting.From, sitting.To)}{painter}");
        page.Block(PlanFacts.Filled(sitting));
        SetBefore(date, sitting);
        page.Blank();
        string? why = null;
        foreach (var task in sitting.Tasks)
        {
            SetTask(date, task, why);
            why = PlanFacts.WhyNow(task, why) is null ? why : task.WhyNotEarlier;
        }

        SetLeaving(date, sitting);
    }

    private void SetBefore(LocalDate date, PlannedSitting sitting)
    {
        if (!sitting.TakeOut.IsEmpty)
            page.Block($"**Take out** {string.Join("; ", PlanFacts.TakeOut(sitting).Select(MarkdownText.Escaped))}");
        foreach (var mix in sitting.Mixes)
        {
            var measures = Mixes.Measures(mix);
            page.Block($"**Mix** {MarkdownText.Escaped(Mixes.Head(mix, date))}");
            page.Table([new("parts"), new("of"), new("measure", true), new("or", true)], [.. mix.Parts.Select((part, i) => (IReadOnlyList<string>)
            [
                Amounts.Parts(part.Parts),
                MarkdownText.Escaped(part.Name),
                measures[i],
                Amounts.Drops(part.Drops),
            ])]);
        }

        var (news, known) = cautions.Of(sitting);
        foreach (var caution in news)
            page.Block($"**Mind** {MarkdownText.Escaped($"{Amounts.Words(caution.Name)}: {caution.Text}")}");
        if (known.Count > 0)
            page.Block($"**Mind** as before: {MarkdownText.Escaped(string.Join(", ", known))}");
    }

    private void SetTask(LocalDate date, PlannedTask task, string? whyBefore)
    {
        page.Line($"- [ ] **{Moments.Time(task.From)}** {MarkdownText.Escaped(Amounts.Capital(task.Words))}, "
            + $"{Amounts.Counted(Moments.Minutes(task.From, task.To), "min", "min")}");
        foreach (var finding in beside[task.Id])
            page.Line($"  - **{finding.Level.Word()}:** {MarkdownText.Escaped(Sentences(finding))}");
        if (Using(task) is { Length: > 0 } use)
            page.Line($"  - {use}");
        if (task.CleanOutBefore is { } clean)
            page.Line($"  - clean {MarkdownText.Escaped(PlanFacts.CleanFirst(task, clean))}");
        if (task.LoadedUntil is { } until)
            page.Line($"  - then {MarkdownText.Escaped(PlanFacts.StandsLoaded(task, until))}");
        foreach (var wait in task.Starts)
            page.Line($"  - wait: {MarkdownText.Escaped(PlanFacts.Wait(wait, date))}");
        if (task.NotLaterThan is { } latest)
            page.Line($"  - **start by {Moments.From(date, latest)}**");
        if (PlanFacts.WhyNow(task, whyBefore) is { } why)
            page.Line($"  - why now: {MarkdownText.Escaped(why)}");
        if (task.Note is { Length: > 0 } note)
            page.Line($"  - note: {MarkdownText.Escaped(note)}");
    }

    private static string Using(PlannedTask task)
    {
        var parts = new List<string>();
        if (task.Model.Length > 0)
            parts.Add(Amounts.Units(task));
        if (task.Paint is { } paint)
        {
            var name = task.Words.Contains(paint.Name, StringComparison.OrdinalIgnoreCase) ? "" : $" {paint.Name}";
            parts.Add($"{Amounts.Volume(paint.Millilitres)}{name}{(paint.Loads > 0 ? $", {Amounts.Counted(paint.Loads, "cup")}" : "")}{Mixes.MixedBy(paint)}");
        }

        if (task.Tool is { } tool && !task.Words.Contains(tool, StringComparison.OrdinalIgnoreCase))
            parts.Add(tool);
        return string.Join("; ", parts.Select(MarkdownText.Escaped));
    }

    private void SetLeaving(LocalDate date, PlannedSitting sitting)
    {
        if (sitting.Drying.IsEmpty && sitting.MasksOn.IsEmpty && sitting.Free is null)
            return;
        page.Block("**Before leaving**");
        page.Blank();
        foreach (var left in sitting.Drying)
            page.Line($"- drying: {MarkdownText.Escaped($"{left.Model}: {left.What}, {left.For} {Moments.From(date, left.Until)}")}");
        foreach (var mask in sitting.MasksOn)
            page.Line($"- masked: {MarkdownText.Escaped($"{mask.Model}: {mask.Mask}, off {Moments.From(date, mask.ComesOff)}{(mask.MustBeOffBy is { } by ? $", at the latest {Moments.From(date, by)}" : "")}")}");
        if (sitting.Free is { } free)
            page.Line($"- free: {MarkdownText.Escaped(PlanFacts.Free(free))}");
    }

    private static string Sentences(Finding finding) =>
        finding.Remedy is { Length: > 0 } remedy ? $"{Amounts.Stopped(finding.Message)} {remedy}" : finding.Message;
}
