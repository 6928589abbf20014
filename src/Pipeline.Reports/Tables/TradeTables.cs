using System.Globalization;
using Pipeline.Abstractions;

namespace Pipeline.Reports;

/// <summary>The tables of the trade as people read them.</summary>
public static class TradeTables
{
    private const string Common = "source";

    /// <summary>All of them, as they hold where these rows do.</summary>
    public static Sequence<TradeTable> Of(TableRows rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        return
        [
            Families(rows),
            Drying(rows),
            new("compatibility", "How a new coat may go over an existing one, while that is dry and once it has cured: fine as it is, scuffed first, as mist coats only, with a barrier varnish between, or never.",
                ["new coat", "over", "dry", "from", "cured", "note", Common],
                Last(rows.Compatibility, row => (row.Coat, row.AsEffect, row.Over), row =>
                [
                    row.Coat + (row.AsEffect ? " effect" : ""), row.Over, Word(row.WhenDry), row.From == DryingState.Recoatable ? "" : Word(row.From), Word(row.WhenCured), row.Note, row.Source,
                ]))
            {
                Joined = 1,
                IsInBlocks = true,
            },
            new("re-wetting", "What a liquid does to a coat it is rubbed on, while that is dry and once it has cured.",
                ["liquid", "coat", "dry", "cured", Common],
                Last(rows.Rewetting, row => (row.Liquid, row.Coat), row => [row.Liquid.Spoken(), row.Coat, Word(row.WhenDry), Word(row.WhenCured), row.Source]))
            {
                Joined = 1,
                IsInBlocks = true,
            },
            new("mask-materials", "What to mask with: what it asks of the paint under it, and how long it may stay on.",
                ["mask", TradeTable.AlsoCalled, "needs", "time-on", "hard-limit", "sets", "strong", Common],
                rows.MaskMaterials.Select(row => Row(
                    row.Name, Listed(row.AlsoCalled), Word(row.Needs), Said(row.TimeOn, "any"), Said(row.HardLimit), Said(row.Sets), YesOrNo(row.IsStrongTack), row.Source)).ToSequence()),
            new("clean-outs", "Attended minutes to clean a spraying tool out; plans count with the middle.",
                ["change", "minutes", Common],
                Last(rows.CleanOuts, row => row.Change, row => [Word(row.Change), Minutes(row), row.Source])),
            new("thinners", "What thinners are made of, by a word in their names, and the paint they curdle.",
                ["thinner", "carrier", "curdles", Common],
                Last(rows.Thinners, row => row.Name, row => [row.Name, Word(row.Carrier), Listed(row.Curdles.Select(Word)), row.Source]))
            {
                Joined = 0,
            },
            new("setting", "How long glues, fillers and wet pieces take.",
                ["what", "sets", "sandable", Common],
                Last(rows.Settings, row => row.Name, row => [row.Name, row.Sets.ToString(), Said(row.Sandable), row.Source])),
            new("figures", "Numbers that rules go by and no other table holds.",
                ["figure", "value", "means", Common],
                Last(rows.Figures, row => row.Name, row => [row.Name, row.Spoken, row.Means, row.Source])),
            Materials(rows),
        ];
    }

    private static TradeTable Families(TableRows rows) => new(
        "families", "The coating chemistries: the air they bear, how long they can be worked, what thins and cleans them.",
        ["family", TradeTable.AlsoCalled, "carrier", "coldest", "warmest", "dampest", "dampest-sprayed-matt", "driest-sprayed", "warmest-sprayed", "recoat-open", "open-time", "pot-life", "thinners", "cleaners", Common],
        rows.Families.Select(row => Row(
            row.Name, Listed(row.AlsoCalled), Word(row.Carrier), Said(row.Coldest, "any"), Said(row.Warmest, "any"), row.Dampest.ToString(), Said(row.DampestSprayedMatt), Said(row.DriestSprayed),
            Said(row.WarmestSprayed), Said(row.RecoatOpen), Said(row.OpenTime), Said(row.PotLife), Listed(row.Thinners), Listed(row.Cleaners), row.Source)).ToSequence());

    private static TradeTable Drying(TableRows rows) => new(
        "drying", "How long a coat takes to each drying state at 20–23 °C and 45–55 % humidity; in a file under families, as thin, heavy and effect.",
        ["family", "coat", .. Enum.GetValues<DryingState>().Select(Word), Common],
        rows.Families.SelectMany(row => new[] { ("thin", row.Thin), ("heavy", row.Heavy), ("effect", row.Effect) }.Where(times => times.Item2 is not null).Select(times => Row(
            [row.Name, times.Item1, .. Enum.GetValues<DryingState>().Select(state => Said(times.Item2!.To(state), "never")), row.Source]))).ToSequence())
    {
        Joined = 1,
    };

    private static TradeTable Materials(TableRows rows) => new(
        "materials", "What pieces are made of, and what that asks for.",
        ["material", TradeTable.AlsoCalled, "porous", "wash-first", "post-cure", "bare-colour", "softens-in-solvent", "dissolves", "warps-above", "harmful-dust", Common],
        rows.Materials.Select(row => Row(
            row.Name, Listed(row.AlsoCalled), YesOrNo(row.IsPorous), YesOrNo(row.NeedsWashing), YesOrNo(row.NeedsPostCure), row.BareColour is { } level ? Word(level) : "",
            YesOrNo(row.SoftensInSolvent), YesOrNo(row.DissolvesInSolvent), Said(row.WarpsAbove), YesOrNo(row.HarmfulDust), row.Source)).ToSequence());

    // the last of the rows about one thing, where the first of them stands
    private static Sequence<Sequence<string>> Last<T, TKey>(Sequence<T> rows, Func<T, TKey> key, Func<T, Sequence<string>> cells) =>
        rows.GroupBy(key).Select(group => cells(group.Last())).ToSequence();

    private static Sequence<string> Row(params Sequence<string> cells) => cells;

    private static string Word<T>(T value)
        where T : struct, Enum => Spelling.Of(value);

    private static string YesOrNo(bool value) => value ? "yes" : "";

    private static string Said<T>(T? value, string otherwise = "")
        where T : struct => value?.ToString() ?? otherwise;

    private static string Listed(IEnumerable<string> words) => string.Join(", ", words);

    private static string Minutes(CleanOutTime row) => row.Low == row.High
        ? string.Create(CultureInfo.InvariantCulture, $"{row.Low.Minutes:0.#} min")
        : string.Create(CultureInfo.InvariantCulture, $"{row.Low.Minutes:0.#}–{row.High.Minutes:0.#} min");
}
