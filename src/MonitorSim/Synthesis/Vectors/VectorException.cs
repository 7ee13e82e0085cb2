namespace MonitorSim.Synthesis.Vectors;

/// <summary>Why a vector cannot be made.</summary>
internal sealed class VectorException(string message) : Exception(message);
