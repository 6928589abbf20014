namespace Pipeline.Tests.EndToEnd;

/// <summary>Whatever a plugin does, a finding names it and the rest works.</summary>
public sealed class PluginFailureTests : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void A_plugin_of_ones_own_brings_its_verb()
    {
        Lay("Shells", PluginSource.Verb("knock"));
        bench.File("buoy.yaml", Files.Buoy + "\n          - knock: all");

        bench.Pipeline("check", "buoy.yaml").Should().Be(new Ran(0, "", ""));
        bench.Pipeline("verbs").Out.Should().Contain("knock ");
        bench.Pipeline("plan", "buoy.yaml", "--from", Files.Monday).ExitCode.Should().Be(0);
    }

    [Fact]
    public void A_folder_named_in_the_call_is_read_too()
    {
        PluginSource.Lay(Path.Combine(bench.Folder, "mine"), "Shells", Bench.Contract, PluginSource.Verb("knock"));

        bench.Pipeline("verbs", "--plugins", "mine").Out.Should().Contain("knock ");
    }

    [Fact]
    public void A_corrupt_file_is_named_and_the_plan_still_comes()
    {
        File.WriteAllText(Lay("Wreck", PluginSource.Verb("sink")), "barnacles");

        NamedAndTheRestWorks("Wreck", "damaged");
    }

    [Fact]
    public void Another_contract_version_is_named_and_the_plan_still_comes()
    {
        PluginSource.LayForContract(bench.OwnPlugins, "Distant", new Version(9, 0, 0, 0));

        NamedAndTheRestWorks("Distant", "version 9.0 of the contract");
    }

    [Fact]
    public void A_constructor_that_throws_is_named_and_the_plan_still_comes()
    {
        Lay("Wreck", PluginSource.Verb("sink", "Sink", "public Sink() { throw new Exception(\"leak\"); }"));

        NamedAndTheRestWorks("Wreck", "leak");
    }

    [Fact]
    public void A_static_constructor_that_throws_is_named_and_the_plan_still_comes()
    {
        Lay("Wreck", PluginSource.Verb("sink", "Sink", "static Sink() { throw new Exception(\"leak\"); }"));

        NamedAndTheRestWorks("Wreck", "leak");
    }

    [Fact]
    public void A_rule_that_throws_is_named_and_the_plan_still_comes()
    {
        Lay("Wreck", PluginSource.Rule("sunken-rule", "SunkenRule", "throw new Exception(\"leak\");"));

        NamedAndTheRestWorks("Wreck", "sunken-rule");
    }

    [Fact]
    public void A_rule_that_throws_late_or_answers_nonsense_is_named()
    {
        Lay("Wreck", PluginSource.Rule("late-rule", "LateRule", "if (moment.Step.Index < 0) yield break; yield return null; throw new Exception(\"leak\");"));

        NamedAndTheRestWorks("Wreck", "late-rule");
    }

    [Fact]
    public void A_verb_that_throws_is_an_error_at_its_step()
    {
        Lay("Wreck", PluginSource.Verb("sink", intend: "throw new InvalidOperationException(\"leak\");"));
        bench.File("buoy.yaml", Files.Buoy + "\n          - sink: all");

        var ran = bench.Pipeline("check", "buoy.yaml").ShowsNoTrace();

        ran.ExitCode.Should().Be(1);
        ran.Err.Should().Contain("buoy.yaml:21:").And.Contain("Wreck").And.Contain("leak");
    }

    [Fact]
    public void A_verb_that_answers_nothing_is_an_error_at_its_step()
    {
        Lay("Wreck", PluginSource.Verb("sink", intend: "return null;"));
        bench.File("buoy.yaml", Files.Buoy + "\n          - sink: all");

        bench.Pipeline("check", "buoy.yaml").ShowsNoTrace().Err.Should().Contain("buoy.yaml:21:").And.Contain("Wreck");
    }

    [Fact]
    public void The_lists_name_a_plugin_that_fails_and_list_the_rest()
    {
        File.WriteAllText(Lay("Wreck", PluginSource.Verb("sink")), "barnacles");

        var ran = bench.Pipeline("verbs").ShowsNoTrace();

        ran.ExitCode.Should().Be(1);
        ran.Err.Should().Contain("Wreck");
        ran.Out.Should().Contain("undercoat ");
    }

    private string Lay(string name, params string[] code) => PluginSource.Lay(bench.OwnPlugins, name, Bench.Contract, code);

    private void NamedAndTheRestWorks(string plugin, string said)
    {
        bench.File("buoy.yaml", Files.Buoy);

        var check = bench.Pipeline("check", "--as", "json", "buoy.yaml").ShowsNoTrace();
        Told.Of(check.Out).Should().ContainSingle().Which.Message.Should().Contain(plugin).And.Contain(said);
        check.ExitCode.Should().Be(1);

        var plan = bench.Pipeline("plan", "buoy.yaml", "--from", Files.Monday).ShowsNoTrace();
        plan.Err.Should().Contain(plugin).And.Contain(said);
        plan.Out.Should().Contain("slate undercoat");
        plan.ExitCode.Should().Be(1);
    }
}
