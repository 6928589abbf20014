using System.Diagnostics;
using System.Text.Json;

namespace Pipeline.Tests.EndToEnd;

/// <summary>The real host on a real folder: nothing that happens to either loses or halves anything.</summary>
public sealed class HostTests : IDisposable
{
    private readonly Bench bench = new();
    private readonly string folder;
    private readonly List<Process> hosts = [];

    public HostTests() => folder = Directory.CreateDirectory(Path.Combine(bench.Folder, "painting")).FullName;

    public void Dispose()
    {
        foreach (var host in hosts)
        {
            if (!host.HasExited)
                host.Kill();
            host.Dispose();
        }

        bench.Dispose();
    }

    [Fact]
    public void A_file_that_arrives_and_changes_is_planned_and_sigterm_ends_with_zero()
    {
        var host = Host();
        Save("buoy.yaml", Files.Buoy);
        Until(() => Exists("buoy.plan.json"));
        Save("buoy.yaml", Files.Buoy.Replace("batch: Buoy", "batch: Second buoy"));
        Until(() => Text("buoy.plan.md").Contains("Second buoy"));

        var said = Stop(host);

        said.ExitCode.Should().Be(0);
        said.Err.Should().Contain("watching").And.Contain("buoy.yaml: planned").And.Contain("stopped");
        Unfinished().Should().BeEmpty();
    }

    [Fact]
    public void A_file_with_errors_gets_its_findings_and_loses_a_plan_that_no_longer_holds()
    {
        Save("buoy.yaml", Files.Buoy);
        var host = Host();
        Until(() => Exists("buoy.plan.json"));

        Save("buoy.yaml", Files.Wrong);
        Until(() => Exists("buoy.findings.json") && Told.Of(Text("buoy.findings.json")).Count == 1 && !Exists("buoy.plan.json"));
        Save("other.yaml", Files.Buoy);
        Until(() => Exists("other.plan.json"));

        Stop(host).ExitCode.Should().Be(0);
    }

    [Fact]
    public void Files_that_are_no_workflows_do_not_keep_the_others_from_being_planned()
    {
        bench.Shell("cd painting; mkfifo a.yaml; mkdir b.yaml; head -c 100 /dev/zero > c.yaml; ln -s nowhere d.yaml; echo 'x: [' > e.yml; truncate -s 50M f.yaml");
        Save("z.yaml", Files.Buoy);

        var host = Host();

        Until(() => Exists("z.plan.json"));
        Stop(host).ShowsNoTrace().ExitCode.Should().Be(0);
    }

    [Fact]
    public void A_restart_does_only_what_is_missing()
    {
        Save("one.yaml", Files.Buoy);
        Save("two.yaml", Files.Buoy);
        var first = Host();
        Until(() => Exists("one.plan.json") && Exists("two.plan.json"));
        Until(() => first.HasExited || Recorded(first, "two.yaml"));
        Stop(first);
        var written = File.GetLastWriteTimeUtc(Path.Combine(folder, "one.plan.json"));
        File.Delete(Path.Combine(folder, "two.plan.md"));

        var second = Host();
        Until(() => Exists("two.plan.md"));
        Save("three.yaml", Files.Buoy);
        Until(() => Exists("three.plan.json"));

        Stop(second).Err.Should().NotContain("one.yaml: planning").And.Contain("two.yaml: planning");
        File.GetLastWriteTimeUtc(Path.Combine(folder, "one.plan.json")).Should().Be(written);
    }

    [Fact]
    public void A_kill_at_any_moment_halves_nothing_and_the_next_start_does_the_rest()
    {
        string[] names = [.. Enumerable.Range(1, 6).Select(i => $"crew{i}")];
        foreach (var name in names)
            Save($"{name}.yaml", Files.Buoy.Replace("batch: Buoy", $"batch: {name}"));

        // the moments are spread over a whole run; what each happens to hit does not matter
        foreach (var milliseconds in new[] { 400, 700, 900, 1000, 1100, 1200, 1400, 1700 })
        {
            var host = Host();
            Thread.Sleep(milliseconds);
            host.Kill();
            host.WaitForExit();
            foreach (var file in Directory.GetFiles(folder, "*.json").Where(file => !Path.GetFileName(file).StartsWith('.')))
            {
                var parse = () => JsonDocument.Parse(File.ReadAllText(file));
                parse.Should().NotThrow($"{file} is whole or not there");
            }
        }

        File.WriteAllText(Path.Combine(folder, ".crew1.plan.json.0123.pipeline-unfinished"), "{ \"kind\": \"pl");
        var last = Host();
        Until(() => names.All(name => Exists($"{name}.plan.json") && Exists($"{name}.plan.md") && Exists($"{name}.findings.json")));
        Until(() => Unfinished().Length == 0);

        Stop(last).ExitCode.Should().Be(0);
        foreach (var name in names)
            Text($"{name}.plan.md").Should().Contain(name);
    }

    [Fact]
    public void A_folder_that_goes_and_comes_back_is_watched_on()
    {
        Save("buoy.yaml", Files.Buoy);
        var host = Host();
        Until(() => Exists("buoy.plan.json"));

        Directory.Delete(folder, recursive: true);
        Thread.Sleep(1000);
        Directory.CreateDirectory(folder);
        Save("buoy.yaml", Files.Buoy);

        Until(() => Exists("buoy.plan.json"));
        Stop(host).ShowsNoTrace().ExitCode.Should().Be(0);
    }

    [Fact]
    public void A_damaged_state_is_put_aside_and_everything_looked_at_anew()
    {
        Directory.CreateDirectory(bench.StateFolder);
        File.WriteAllText(Path.Combine(bench.StateFolder, "state.db"), new string('x', 5000));
        Save("buoy.yaml", Files.Buoy);

        var host = Host();

        Until(() => Exists("buoy.plan.json"));
        Stop(host).Err.Should().Contain("put aside");
        File.Exists(Path.Combine(bench.StateFolder, "state.db.damaged-1")).Should().BeTrue();
    }

    [Fact]
    public void Two_hosts_on_one_folder_are_one_too_many()
    {
        var first = Host();
        Save("buoy.yaml", Files.Buoy);
        Until(() => Exists("buoy.plan.json"));

        bench.Pipeline("host", folder).ShowsNoTrace().Should().Match<Ran>(ran => ran.ExitCode == 2 && ran.Err.Contains("already watches"));

        Stop(first).ExitCode.Should().Be(0);
    }

    private Process Host()
    {
        var host = bench.Start("host", folder);
        hosts.Add(host);
        errors[host] = "";
        host.ErrorDataReceived += (_, line) =>
        {
            lock (errors)
                errors[host] += line.Data + "\n";
        };
        host.BeginErrorReadLine();
        return host;
    }

    private readonly Dictionary<Process, string> errors = [];

    private bool Recorded(Process host, string file)
    {
        lock (errors)
            return errors[host].Contains($"{file}: planned", StringComparison.Ordinal);
    }

    private Ran Stop(Process host)
    {
        Process.Start("kill", ["-TERM", host.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]).WaitForExit();
        host.WaitForExit(TimeSpan.FromSeconds(60)).Should().BeTrue("SIGTERM stops the host");
        host.WaitForExit();
        lock (errors)
            return new Ran(host.ExitCode, host.StandardOutput.ReadToEnd(), errors[host]);
    }

    private void Save(string name, string text) => File.WriteAllText(Path.Combine(folder, name), text);

    private bool Exists(string name) => File.Exists(Path.Combine(folder, name));

    private string Text(string name) => Exists(name) ? File.ReadAllText(Path.Combine(folder, name)) : "";

    private string[] Unfinished() => Directory.GetFiles(folder, ".*unfinished");

    private static void Until(Func<bool> isSo)
    {
        for (var i = 0; i < 1200; i++)
        {
            if (isSo())
                return;
            Thread.Sleep(50);
        }

        throw new TimeoutException("What the host should have done has not happened within a minute.");
    }
}
