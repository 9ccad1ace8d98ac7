namespace SpecLint.Tool.Editor.Protocol;

/// <summary>Codes of errors (JSON-RPC 2.0, 5.1; Language Server Protocol 3.17, Response Message).</summary>
internal static class ErrorCodes
{
    public const int ParseError = -32700;
    public const int InvalidRequest = -32600;
    public const int MethodNotFound = -32601;
    public const int InvalidParameters = -32602;
    public const int InternalError = -32603;
    public const int NotInitialized = -32002;
    public const int RequestFailed = -32803;
    public const int RequestCancelled = -32800;
}

/// <summary>A request that cannot be served, with the reason for the person at the editor.</summary>
internal sealed class RequestException(string sentence) : Exception(sentence);
