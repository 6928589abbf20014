using System.Diagnostics;
using System.Text.RegularExpressions;
using Pipeline.Abstractions;
using Pipeline.Engine;
using Pipeline.Plugins.Coats;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Plugins;

/// <summary>The plugin that docs/plugins.md walks through: its text is its files, they build on their own, and the engine takes it.</summary>
public sealed partial class OwnPluginTests(OwnPlugin built) : IClassFixture<OwnPlugin>
{
    [GeneratedRegex(
        "^`docs/examples/Patina/(?<file>[^`]+)`\n\n(?<fence>`{3,})[a-z]+\n(?<text>.*?)^\\k<fence>$",
        RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex ShownFile();

    [Fact]
    public void The_page_shows_every_file_of_the_example_as_it_is()
    {
        var page = File.ReadAllText(Path.Combine(OwnPlugin.Repository, "docs", "plugins.md"));
        var shown = ShownFile().Matches(page).ToDictionary(match => match.Groups["file"].Value, match => match.Groups["text"].Value);
        shown.Keys.Should().BeEquivalentTo(Directory.GetFiles(OwnPlugin.Source).Select(Path.GetFileName));
        foreach (var (file, text) in shown)
            text.Should().Be(File.ReadAllText(Path.Combine(OwnPlugin.Source, file)), file);
    }

    [Fact]
    public void The_engine_loads_it_like_any_other()
    {
        built.Findings.Should().BeEmpty();
        built.Trade.Verbs.Select(verb => (verb.Plugin, verb.Item.Name)).Should().Equal(("Patina", "patina"));
        built.Trade.Rules.Select(rule => (rule.Plugin, rule.Item.Name)).Should().Equal(("Patina", "patina-needs-metal"));
        built.Trade.Families.Select(family => family.Item.Name).Should().Equal("patina fluid");
        built.Trade.Compatibility.Select(row => (row.Item.Coat, row.Item.Over)).Should().Equal(("patina fluid", "enamel"), ("patina fluid", "oil"), ("lacquer varnish", "patina fluid"));
    }

    [Fact]
    public void It_leaves_the_contract_to_the_program() =>
        Directory.GetFiles(built.Folder).Select(Path.GetFileName).Should().Contain("Patina.dll").And.NotContain("Pipeline.Abstractions.dll");

    [Fact]
    public void Its_verb_lays_a_layer_that_dries_as_its_family_says()
    {
        var intent = Patina(coats: 2);
        Told.Deeds(intent).Should().Be("Effect green fluid by Brush, 2 Thin, recoatable 6–9 h");
        Told.Work(intent).Should().Be("1.9 min, 2 passes, set up 3/5, rack");
        intent.Cautions.Select(caution => caution.Name).Should().Equal("patina-fluid");
    }

    [Fact]
    public void Its_verb_refuses_what_makes_no_sense() =>
        this.Invoking(it => it.Patina(coats: 6)).Should().Throw<ParticularException>().Which.Particular.Should().Be("coats");

    [Theory]
    [InlineData("over bare metal paint", true, 0)]
    [InlineData("over ordinary colour", false, 1)]
    public void Its_rule_asks_for_metal(string @case, bool metallic, int findings)
    {
        var under = Bench.Pot("under", Families.WaterborneAcrylic) with { IsMetallic = metallic };
        built.Trade.Rules.Single().Item.Judge(MomentOver(under)).Should().HaveCount(findings, @case);
    }

    [Theory]
    [InlineData("bronze is metal", "waterborne acrylic, metallic: yes", new string[0])]
    [InlineData("bronze is brown", "waterborne acrylic, metallic: no", new[] { "patina-needs-metal" })]
    [InlineData("bronze is an enamel, on which the fluid beads", "enamel, metallic: yes", new[] { "fat-over-lean" })]
    public void Its_workflow_is_checked_with_the_verbs_and_rules_of_the_house(string @case, string bronze, string[] rules)
    {
        var text = File.ReadAllText(Path.Combine(OwnPlugin.Source, "helmets.yaml")).Replace("waterborne acrylic, metallic: yes", bronze, StringComparison.Ordinal);
        var house = TradeJoining.TradeOf(AllPlugins.Assemblies);
        var (trade, clashes) = TradeJoining.Join([("House", "house", house), ("Patina", "patina", built.Trade)]);
        clashes.Should().BeEmpty();
        var bound = Binder.Bind([Reader.Read(new SourceText("helmets.yaml", text)).Tree!], trade);
        bound.Findings.Should().BeEmpty();
        Walk.Run(bound.Batch!, trade).Findings.Select(finding => finding.Rule).Should().Equal(rules, @case);
    }

    private Paint Fluid => Bench.Pot("green fluid", built.Trade.Families.Single().Item);

    private Intent Patina(int coats)
    {
        var verb = built.Trade.Verbs.Single().Item;
        return verb.Intend(Bench.Six("resin"), Activator.CreateInstance(verb.ParticularsType, Fluid, coats)!);
    }

    private Moment MomentOver(Paint under)
    {
        var job = Bench.Six("resin");
        var surface = new Surface
        {
            Material = job.Model.Material,
            Layers = [Layer.Of(under, LayerRole.Colour, Method.Brush, Body.Heavy)],
        };
        var before = new SurfaceMap([new(job.As, surface)]);
        var step = new Step
        {
            Index = 0,
            Verb = "patina",
            Kind = StepKind.Coat,
            Place = job.Model.Place,
            As = job.As,
            Areas = job.Named,
            Deeds = Patina(1).Deeds,
            Work = Patina(1).Work,
        };
        return new Moment
        {
            Model = job.Model,
            Route = [step],
            Step = step,
            Before = before,
            After = before,
            Passage = new Passage(LifecycleState.Coated, LifecycleState.Coated),
            Climate = BenchClimate.Standard,
            Pieces = new Pieces(job.Model, [step]),
        };
    }
}

/// <summary>The example of docs/plugins.md, copied out of the repository, built as a painter would build it, and loaded.</summary>
public sealed class OwnPlugin : IDisposable
{
    private readonly string scratch = Directory.CreateTempSubdirectory("own-plugin").FullName;

    public OwnPlugin()
    {
        var copy = Directory.CreateDirectory(Path.Combine(scratch, "source")).FullName;
        foreach (var file in Directory.GetFiles(Source))
            File.Copy(file, Path.Combine(copy, Path.GetFileName(file)));
        Build(copy, Folder);
        (Trade, Findings) = PluginLoading.Load([Path.GetDirectoryName(Folder)!]);
    }

    public static string Repository { get; } = FindRepository();

    public static string Source { get; } = Path.Combine(Repository, "docs", "examples", "Patina");

    public string Folder => Path.Combine(scratch, "plugins", "Patina");

    public Trade Trade { get; }

    public Sequence<Finding> Findings { get; }

    public void Dispose() => Directory.Delete(scratch, recursive: true);

    private static void Build(string source, string output)
    {
        string[] call =
        [
            "build", source, "-o", output, $"-p:PipelineHome={AppContext.BaseDirectory}",
            "--nologo", "-nodeReuse:false", "-p:UseSharedCompilation=false",
        ];
        var start = new ProcessStartInfo("dotnet", call)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        // the test host's own build settings are none of this build's business
        foreach (var inherited in start.Environment.Keys.Where(key => key.StartsWith("MSBUILD", StringComparison.OrdinalIgnoreCase)).ToList())
            start.Environment.Remove(inherited);
        using var build = Process.Start(start)!;
        var said = build.StandardOutput.ReadToEnd();
        build.WaitForExit();
        if (build.ExitCode != 0)
            throw new InvalidOperationException($"The example does not build:\n{said}");
    }

    private static string FindRepository()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Pipeline.sln")))
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("Not inside the repository.");
        return folder;
    }
}
