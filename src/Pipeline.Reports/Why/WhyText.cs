using System.Globalization;
using Pipeline.Abstractions;
using Pipeline.Planning;
using Pipeline.Surfaces;
using Spectre.Console;

namespace Pipeline.Reports;

/// <summary>Explains a step: the surfaces before and after it, layer by layer, and what each rule made of it.</summary>
public static class WhyText
{
    /// <summary>The explanation as text.</summary>
    /// <param name="look">The step.</param>
    /// <param name="others">Other models whose routes come by the same place of the file.</param>
    /// <param name="style">How it is set.</param>
    /// <param name="planned">When the step is planned, and the plan; null to leave that out.</param>
    public static string Render(StepLook look, Sequence<string> others, TextStyle style, (StepReasons Reasons, Plan Plan)? planned = null) =>
        Set(look, others, style, planned).ToString();

    /// <summary>Puts the explanation on a console, as it suits it.</summary>
    public static void Write(StepLook look, Sequence<string> others, IAnsiConsole console, (StepReasons Reasons, Plan Plan)? planned = null) =>
        Set(look, others, TextStyle.For(console), planned).WriteTo(console);

    private static Page Set(StepLook look, Sequence<string> others, TextStyle style, (StepReasons Reasons, Plan Plan)? planned)
    {
        ArgumentNullException.ThrowIfNull(look);
        ArgumentNullException.ThrowIfNull(style);
        var page = new Page(style);
        var step = look.Moment.Step;
        var named = step.Areas.IsEmpty ? "" : $" {Listed(step.Areas)}";
        page.Hung(new Run($"{Visible.Line(step.Place.ToString())}: ", Tone.Quiet), Visible.Line($"{step.Verb}{named}"), Tone.Heading);
        var scheme = step.Scheme is { } name ? $", in the scheme {name}" : "";
        page.Hung("  ", Visible.Line(string.Create(CultureInfo.InvariantCulture, $"{look.Moment.Model.Name}, step {step.Index + 1} of {look.Route.Steps.Count}{scheme}; the piece is {Word(look.Moment.Passage.Before)} before and {Word(look.Moment.Passage.After)} after.")));
        if (!others.IsEmpty)
            page.Hung("  ", Visible.Line($"The same step of {Listed(others)}: --model shows it."));
        SurfaceText.Set(page, look);
        SetSpeaking(page, look);
        if (planned is var (reasons, plan))
            WhyPlanText.Set(page, reasons, plan);
        SetSilent(page, look);
        return page;
    }

    private static void SetSpeaking(Page page, StepLook look)
    {
        var speaking = look.Rules.Where(rule => !rule.IsSilent).ToList();
        page.Blank();
        page.Line(new Run("What the rules say", Tone.Heading));
        if (speaking.Count == 0)
            page.Line("  Nothing.");
        foreach (var rule in speaking)
            SetRule(page, look, rule);
    }

    private static void SetSilent(Page page, StepLook look)
    {
        var would = look.Rules.Where(rule => rule.IsSilent && !rule.WouldSpeakIf.IsEmpty).ToList();
        if (would.Count > 0)
        {
            page.Blank();
            page.Line(new Run("Satisfied; they would speak if", Tone.Heading));
            foreach (var rule in would)
                page.Hung($"  {Visible.Line(rule.Rule.Item.Name)}: ", Visible.Line(string.Join(", or if ", rule.WouldSpeakIf)));
        }

        var idle = look.Rules.Where(rule => rule.IsSilent && rule.WouldSpeakIf.IsEmpty).Select(rule => rule.Rule.Item.Name).ToList();
        if (idle.Count > 0)
        {
            page.Blank();
            page.Line(new Run(string.Create(CultureInfo.InvariantCulture, $"Looked, with nothing to say ({idle.Count})"), Tone.Heading));
            page.Hung("  ", Visible.Line(string.Join(", ", idle)), Tone.Quiet);
        }
    }

    private static void SetRule(Page page, StepLook look, RuleLook rule)
    {
        var name = Visible.Line(rule.Rule.Item.Name);
        foreach (var verdict in rule.Verdicts)
        {
            if (verdict is Verdict.Says says)
                SetSaid(page, name, says.Level, says.Message, says.Remedy);
            else if (verdict is Verdict.Needs needs)
                SetWait(page, look, name, needs);
        }

        foreach (var verdict in rule.OfBatch)
            SetSaid(page, name, verdict.Level, verdict.Message, verdict.Remedy);
        if (rule.Silence is { } silence)
            page.Hung(new Run("    silenced: ", Tone.Quiet), Visible.Line($"{silence.Reason} ({silence.Place})"));
    }

    private static void SetSaid(Page page, string rule, Level level, string message, string remedy)
    {
        page.Hung(new Run($"  {level.Word()}: ", level.Tone()), $"{Visible.Line(message)} [{rule}]");
        page.Hung(new Run("    do: ", Tone.Quiet), Visible.Line(remedy));
    }

    private static void SetWait(Page page, StepLook look, string rule, Verdict.Needs needs)
    {
        var since = look.Route.Steps[needs.Since];
        var figure = Figure(Waiting.Of(needs, look.Climate));
        var source = needs.IsFromLabel ? "as label or file say" : "a usual figure";
        var start = needs.SinceStart ? "the start of " : "";
        var areas = needs.Areas.IsEmpty ? "" : $" ({Listed(needs.Areas)})";
        page.Hung(
            new Run("  wait: ", Tone.Strong),
            Visible.Line(string.Create(CultureInfo.InvariantCulture, $"{needs.For}{areas}: {figure} since {start}'{since.Verb}' on line {since.Place.Line}, {source}. {needs.Message} [{rule}]")));
    }

    private static string Figure(Waiting waiting)
    {
        if (waiting.LimitMinutes is { } limit)
            return "at most " + new Drying(limit) + (waiting.HardLimitMinutes is { } hard ? $", never more than {new Drying(hard)}" : "");
        var climate = waiting.IsTooDamp ? ", in air too damp for any figure" : waiting.Factor is > 0.995 and < 1.005 ? "" : string.Create(CultureInfo.InvariantCulture, $", {waiting.Factor:0.##} times the usual in this climate");
        var within = waiting.WithinMinutes is { } open ? $"within {new Drying(open)}, or after " : "";
        var range = DryingRange.Minutes(waiting.LowMinutes ?? 0, Math.Max(waiting.LowMinutes ?? 0, waiting.HighMinutes ?? 0));
        return $"{within}{range}{climate}";
    }

    private static string Word(LifecycleState state) => state.ToString().ToLowerInvariant();

    internal static string Listed(IReadOnlyList<string> names) => names.Count switch
    {
        0 => "",
        1 => names[0],
        _ => string.Join(", ", names.Take(names.Count - 1)) + " and " + names[^1],
    };
}
