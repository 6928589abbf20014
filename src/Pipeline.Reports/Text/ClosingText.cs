using Pipeline.Planning;

namespace Pipeline.Reports;

/// <summary>What stands after the last sitting: finishes, shopping, masks by night, why it is not shorter, what was assumed.</summary>
internal static class ClosingText
{
    private const int LabelCells = 9;

    public static void Set(Page page, Plan plan)
    {
        if (!plan.Days.IsEmpty)
        {
            page.Blank();
            page.Rule('=');
        }

        SetFinishes(page, plan);
        SetShopping(page, plan);
        SetMasks(page, plan);
        SetReasons(page, plan);
        SetSilent(page, plan);
        SetAssumptions(page, plan);
    }

    private static void SetFinishes(Page page, Plan plan)
    {
        if (plan.Finishes.IsEmpty)
            return;
        var dues = plan.Finishes.Select(f => f.Due?.ToInstant()).Distinct().ToList();
        var common = dues is [not null] ? plan.Finishes[0].Due : null;
        Head(page, "Finished", common is { } due ? $"due {Moments.Full(due)}" : "");
        Columns.Set(page, 0, [new("model"), new(PlanFacts.ReadyWord(plan)), new("due"), new("to spare"), new("can be packed")],
            [.. plan.Finishes.Select(finish => (IReadOnlyList<Run>)
            [
                Amounts.Model(finish.Model, finish.Units),
                Moments.Full(finish.Ready),
                common is null && finish.Due is { } by ? Moments.Full(by) : "",
                new Run(PlanFacts.Margin(finish).Words, PlanFacts.Margin(finish).Tone),
                finish.Cured is { } cured ? Moments.Day(cured.Date) : "",
            ])]);
    }

    private static void SetShopping(Page page, Plan plan)
    {
        if (plan.Shopping.IsEmpty)
            return;
        Head(page, "Paints and thinners", "with losses and 20 % to spare");
        Columns.Set(page, 0, [new(""), new("need", true), new("stock", true), new(""), new("for")],
            [.. plan.Shopping.ShortFirst().Select(item => (IReadOnlyList<Run>)
            [
                Visible.Line(item.Name),
                Amounts.Volume(item.NeedMillilitres),
                item.StockMillilitres is { } stock ? Amounts.Volume(stock) : "?",
                new Run(PlanFacts.Stock(item).Words, PlanFacts.Stock(item).Tone),
                string.Join(", ", item.UsedIn.Select(Visible.Line)),
            ])]);
    }

    private static void SetMasks(Page page, Plan plan)
    {
        var nights = MaskedNight.Of(plan);
        if (nights.Count == 0)
            return;
        Head(page, "Masks by night");
        Columns.Set(page, 0, [new("night of"), new("on"), new("off"), new("at the latest")],
            [.. nights.SelectMany(night => night.Masks.Select((mask, i) => (IReadOnlyList<Run>)
            [
                i > 0 ? "" : night.First == night.Last ? Moments.Day(night.First) : $"{Moments.Day(night.First)} to {Moments.Day(night.Last)}",
                $"{Visible.Line(mask.Model)}: {Visible.Line(mask.Mask)} ({Visible.Line(mask.Material)})",
                Moments.Full(mask.Off),
                mask.MustBeOffBy is { } by ? Moments.Full(by) : "",
            ]))]);
    }

    private static void SetReasons(Page page, Plan plan)
    {
        if (plan.Days.IsEmpty)
            return;
        Head(page, "Why it is not shorter");
        for (var i = 0; i < plan.CriticalChain.Count; i++)
            page.Hung(FormattableString.Invariant($"{i + 1,3}  "), Visible.Line(plan.CriticalChain[i]));
        if (!plan.CriticalChain.IsEmpty)
            page.Blank();
        foreach (var sentence in PlanFacts.Goodness(plan))
            page.Hung("", sentence);
    }

    /// <summary>Findings that stand at no task; they come before the sittings, for they may change the painter's mind.</summary>
    public static void SetFindings(Page page, Plan plan)
    {
        var rest = PlanFacts.NotBeside(plan);
        if (rest.Count == 0)
            return;
        Head(page, "Findings");
        foreach (var finding in rest)
        {
            page.Hung(new Run(Cells.Left(finding.Level.Word(), LabelCells), finding.Level.Tone()), Visible.Line(finding.Message));
            if (finding.Remedy is { Length: > 0 } remedy)
                page.Hung(new Run(Cells.Left("do", LabelCells), Tone.Quiet), Visible.Line(remedy));
            page.Hung(new Run(Cells.Left("see", LabelCells), Tone.Quiet), Visible.Line($"{finding.Place}{(finding.Rule is null ? "" : $" [{finding.Rule}]")}"), Tone.Quiet);
        }
    }

    /// <summary>What would get a late batch done in time.</summary>
    public static void SetWaysOut(Page page, Plan plan)
    {
        if (plan.WaysOut.IsEmpty)
            return;
        Head(page, "Ways out", PlanFacts.WaysOutHead(plan));
        for (var i = 0; i < plan.WaysOut.Count; i++)
        {
            var (words, tone) = PlanFacts.WayOut(plan.WaysOut[i]);
            page.Hung(FormattableString.Invariant($"{i + 1,3}  "), words, tone);
        }
    }

    private static void SetSilent(Page page, Plan plan)
    {
        var silent = plan.Findings.Silent().GravestFirst().ToList();
        if (silent.Count > 0)
            Head(page, "Silenced");
        foreach (var finding in silent)
            page.Hung("- ", Visible.Line($"{finding.Rule}: {finding.Silenced} ({finding.Place})"));
    }

    private static void SetAssumptions(Page page, Plan plan)
    {
        var remarks = PlanFacts.Remarks(plan).ToList();
        if (!plan.Assumptions.IsEmpty)
            Head(page, "Assumed", "nobody has confirmed these; write what you know into the file");
        foreach (var assumption in plan.Assumptions)
            page.Hung("- ", Visible.Line(assumption));
        if (remarks.Count == 0)
            return;
        page.Blank();
        page.Rule('-');
        foreach (var remark in remarks)
            page.Hung("", remark, Tone.Quiet);
    }

    /// <summary>A section's head.</summary>
    public static void Head(Page page, string words, string aside = "")
    {
        page.Blank();
        if (aside.Length == 0)
            page.Line(new Run(words.ToUpperInvariant(), Tone.Heading));
        else
            page.Hung(new Run(words.ToUpperInvariant() + "   ", Tone.Heading), aside, Tone.Quiet);
        page.Rule('-');
    }
}
