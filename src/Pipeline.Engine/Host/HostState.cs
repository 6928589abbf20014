using System.Globalization;
using Microsoft.Data.Sqlite;
using NodaTime;
using NodaTime.Text;

namespace Pipeline.Engine;

/// <summary>What the host made of a version of a file.</summary>
public enum HostResult
{
    /// <summary>A plan lies beside it.</summary>
    Planned,

    /// <summary>Only findings lie beside it: the file has errors.</summary>
    Findings,

    /// <summary>Only findings lie beside it: no plan meets what the file asks.</summary>
    NoPlan,

    /// <summary>The program failed on it.</summary>
    Broke,
}

/// <summary>A version of a file that is done.</summary>
/// <param name="Folder">The folder watched, as a full path.</param>
/// <param name="Name">The file's name in it.</param>
/// <param name="ContentHash">SHA-256 of its bytes, in hexadecimal.</param>
/// <param name="Result">What came of it.</param>
/// <param name="At">When it was done.</param>
public sealed record HostEntry(string Folder, string Name, string ContentHash, HostResult Result, Instant At);

/// <summary>What the host has done, so that a restart does only what is missing.</summary>
public interface IHostState
{
    /// <summary>The last version of a file that was done, or null.</summary>
    /// <exception cref="HostStateException">The state cannot be read now.</exception>
    HostEntry? Find(string folder, string name);

    /// <summary>Notes that a version is done; it is on the disk when this returns.</summary>
    /// <exception cref="HostStateException">The state cannot be written now.</exception>
    void Record(HostEntry entry);
}

/// <summary>The host's state cannot be used now: the disk is full, or the file is held or damaged.</summary>
public sealed class HostStateException : Exception
{
    /// <summary>With what to say.</summary>
    public HostStateException(string message)
        : base(message)
    {
    }

    /// <summary>With what to say and what happened.</summary>
    public HostStateException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    /// <summary>Without more.</summary>
    public HostStateException()
    {
    }
}

/// <summary>
/// The state in one SQLite file. Write-ahead logging with full synchronisation: what has been recorded outlives a kill and a
/// loss of power. A damaged file is put aside, since all of it can be made again from the folder.
/// </summary>
public sealed class SqliteHostState : IHostState
{
    /// <summary>The version of the tables; kept in the file's <c>user_version</c>.</summary>
    private const int TablesVersion = 1;

    private readonly string connection;

    private SqliteHostState(string connection) => this.connection = connection;

    /// <summary>Opens the state's file or makes it.</summary>
    /// <param name="file">Its path; its folder must be there.</param>
    /// <param name="putAside">The path a damaged file was moved to, or null.</param>
    /// <exception cref="HostStateException">It cannot be opened, or a newer version of the program wrote it.</exception>
    public static SqliteHostState Open(string file, out string? putAside)
    {
        putAside = null;
        var state = new SqliteHostState(new SqliteConnectionStringBuilder { DataSource = file, DefaultTimeout = 5, Pooling = false }.ToString());
        try
        {
            state.Prepare(file);
        }
        catch (SqliteException fault) when (fault.SqliteErrorCode is 11 or 26)
        {
            putAside = PutAside(file);
            Guarded(() => state.Prepare(file));
        }
        catch (SqliteException fault)
        {
            throw Unusable(fault);
        }

        return state;
    }

    /// <inheritdoc/>
    public HostEntry? Find(string folder, string name)
    {
        HostEntry? found = null;
        Guarded(() =>
        {
            using var open = Opened();
            using var command = open.CreateCommand();
            command.CommandText = "SELECT content_hash, result, at FROM done WHERE folder = $folder AND name = $name";
            command.Parameters.AddWithValue("$folder", folder);
            command.Parameters.AddWithValue("$name", name);
            using var rows = command.ExecuteReader();
            if (rows.Read()
                && Enum.TryParse<HostResult>(rows.GetString(1), out var result)
                && InstantPattern.ExtendedIso.Parse(rows.GetString(2)) is { Success: true } at)
            {
                found = new HostEntry(folder, name, rows.GetString(0), result, at.Value);
            }
        });
        return found;
    }

    /// <inheritdoc/>
    public void Record(HostEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        Guarded(() =>
        {
            using var open = Opened();
            using var command = open.CreateCommand();
            command.CommandText =
                """
                INSERT INTO done (folder, name, content_hash, result, at) VALUES ($folder, $name, $hash, $result, $at)
                ON CONFLICT (folder, name) DO UPDATE SET content_hash = $hash, result = $result, at = $at
                """;
            command.Parameters.AddWithValue("$folder", entry.Folder);
            command.Parameters.AddWithValue("$name", entry.Name);
            command.Parameters.AddWithValue("$hash", entry.ContentHash);
            command.Parameters.AddWithValue("$result", entry.Result.ToString());
            command.Parameters.AddWithValue("$at", InstantPattern.ExtendedIso.Format(entry.At));
            command.ExecuteNonQuery();
        });
    }

    private static string PutAside(string file)
    {
        for (var number = 1; ; number++)
        {
            var aside = string.Create(CultureInfo.InvariantCulture, $"{file}.damaged-{number}");
            if (File.Exists(aside))
                continue;
            try
            {
                File.Move(file, aside);
                File.Delete(file + "-wal");
                File.Delete(file + "-shm");
                return aside;
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                throw Unusable(fault);
            }
        }
    }

    private static HostStateException Unusable(Exception fault) => new($"the host's state cannot be used: {Faults.InWords(fault)}", fault);

    private void Prepare(string file)
    {
        using var open = Opened();
        using var command = open.CreateCommand();
        command.CommandText = "PRAGMA journal_mode = WAL; PRAGMA user_version";
        var version = Convert.ToInt32(LastScalar(command), CultureInfo.InvariantCulture);
        if (version > TablesVersion)
            throw new HostStateException($"the host's state {file} was written by a newer version of this program");
        command.CommandText =
            $"""
            CREATE TABLE IF NOT EXISTS done (
                folder TEXT NOT NULL, name TEXT NOT NULL, content_hash TEXT NOT NULL, result TEXT NOT NULL, at TEXT NOT NULL,
                PRIMARY KEY (folder, name)) STRICT, WITHOUT ROWID;
            PRAGMA user_version = {TablesVersion}
            """;
        command.ExecuteNonQuery();
    }

    private static object? LastScalar(SqliteCommand command)
    {
        object? last = null;
        using var rows = command.ExecuteReader();
        do
        {
            while (rows.Read())
                last = rows.GetValue(0);
        }
        while (rows.NextResult());
        return last;
    }

    private SqliteConnection Opened()
    {
        var open = new SqliteConnection(connection);
        try
        {
            open.Open();
            using var command = open.CreateCommand();
            command.CommandText = "PRAGMA synchronous = FULL";
            command.ExecuteNonQuery();
            return open;
        }
        catch
        {
            open.Dispose();
            throw;
        }
    }

    private static void Guarded(Action action)
    {
        try
        {
            action();
        }
        catch (SqliteException fault)
        {
            throw Unusable(fault);
        }
    }
}
