using Pipeline.Planning;

namespace Pipeline.Reports;

/// <summary>What stands after the last sitting, in Markdown.</summary>
internal static class ClosingMarkdown
{
    public static void Set(MarkdownText page, Plan plan)
    {
        SetFinishes(page, plan);
        SetShopping(page, plan);
        SetMasks(page, plan);
        SetReasons(page, plan);
        SetSilent(page, plan);
        SetAssumptions(page, plan);
    }

    private static void SetFinishes(MarkdownText page, Plan plan)
    {
        if (plan.Finishes.IsEmpty)
            return;
        page.Heading(2, "Finished");
        page.Table([new("model"), new(PlanFacts.ReadyWord(plan)), new("due"), new("to spare"), new("can be packed")],
            [.. plan.Finishes.Select(finish => (IReadOnlyList<string>)
            [
                MarkdownText.Escaped(Amounts.Model(finish.Model, finish.Units)),
                Moments.Full(finish.Ready),
                finish.Due is { } due ? Moments.Full(due) : "",
                PlanFacts.Margin(finish) is (var words, Tone.Error) ? $"**{words}**" : PlanFacts.Margin(finish).Words,
                finish.Cured is { } cured ? Moments.Day(cured.Date) : "",
            ])]);
    }

    private static void SetShopping(MarkdownText page, Plan plan)
    {
        if (plan.Shopping.IsEmpty)
            return;
        page.Heading(2, "Paints and thinners");
        page.Block("With losses and 20 % to spare.");
        page.Table([new(""), new("need", true), new("stock", true), new(""), new("for")],
            [.. plan.Shopping.ShortFirst().Select(item => (IReadOnlyList<string>)
            [
                MarkdownText.Escaped(item.Name),
                Amounts.Volume(item.NeedMillilitres),
                item.StockMillilitres is { } stock ? Amounts.Volume(stock) : "?",
                PlanFacts.Stock(item) is (var words, Tone.Warning) ? $"**{words}**" : PlanFacts.Stock(item).Words,
                string.Join(", ", item.UsedIn.Select(MarkdownText.Escaped)),
            ])]);
    }

    private static void SetMasks(MarkdownText page, Plan plan)
    {
        var nights = MaskedNight.Of(plan);
        if (nights.Count == 0)
            return;
        page.Heading(2, "Masks by night");
        page.Table([new("night of"), new("on"), new("off"), new("at the latest")],
            [.. nights.SelectMany(night => night.Masks.Select(mask => (IReadOnlyList<string>)
            [
                night.First == night.Last ? Moments.Day(night.First) : $"{Moments.Day(night.First)} to {Moments.Day(night.Last)}",
                MarkdownText.Escaped($"{mask.Model}: {mask.Mask} ({mask.Material})"),
                Moments.Full(mask.Off),
                mask.MustBeOffBy is { } by ? Moments.Full(by) : "",
            ]))]);
    }

    private static void SetReasons(MarkdownText page, Plan plan)
    {
        if (plan.Days.IsEmpty)
            return;
        page.Heading(2, "Why it is not shorter");
        if (!plan.CriticalChain.IsEmpty)
            page.Blank();
        for (var i = 0; i < plan.CriticalChain.Count; i++)
            page.Line(FormattableString.Invariant($"{i + 1}. {MarkdownText.Escaped(plan.CriticalChain[i])}"));
        page.Block(string.Join(' ', PlanFacts.Goodness(plan)));
    }

    /// <summary>Findings that stand at no task; they come before the sittings, for they may change the painter's mind.</summary>
    public static void SetFindings(MarkdownText page, Plan plan)
    {
        var rest = PlanFacts.NotBeside(plan);
        if (rest.Count > 0)
        {
            page.Heading(2, "Findings");
            page.Blank();
        }

        foreach (var finding in rest)
        {
            var remedy = finding.Remedy is { Length: > 0 } words ? $" {MarkdownText.Escaped(words)}" : "";
            var rule = finding.Rule is null ? "" : $", {finding.Rule}";
            page.Line($"- **{finding.Level.Word()}:** {MarkdownText.Escaped(Amounts.Stopped(finding.Message))}{remedy} ({MarkdownText.Escaped($"{finding.Place}{rule}")})");
        }
    }

    /// <summary>What would get a late batch done in time.</summary>
    public static void SetWaysOut(MarkdownText page, Plan plan)
    {
        if (plan.WaysOut.IsEmpty)
            return;
        page.Heading(2, "Ways out");
        page.Block($"{Amounts.Capital(PlanFacts.WaysOutHead(plan))}.");
        page.Blank();
        for (var i = 0; i < plan.WaysOut.Count; i++)
            page.Line(FormattableString.Invariant($"{i + 1}. {MarkdownText.Escaped(PlanFacts.WayOut(plan.WaysOut[i]).Words)}"));
    }

    private static void SetSilent(MarkdownText page, Plan plan)
    {
        var silent = plan.Findings.Silent().GravestFirst().ToList();
        if (silent.Count > 0)
        {
            page.Heading(2, "Silenced");
            page.Blank();
        }

        foreach (var finding in silent)
            page.Line($"- {MarkdownText.Escaped($"{finding.Rule}: {finding.Silenced} ({finding.Place})")}");
    }

    private static void SetAssumptions(MarkdownText page, Plan plan)
    {
        if (!plan.Assumptions.IsEmpty)
        {
            page.Heading(2, "Assumed");
            page.Block("Nobody has confirmed these; write what you know into the file.");
            page.Blank();
        }

        foreach (var assumption in plan.Assumptions)
            page.Line($"- {MarkdownText.Escaped(assumption)}");
        foreach (var remark in PlanFacts.Remarks(plan))
            page.Block(MarkdownText.Escaped(remark));
    }
}
