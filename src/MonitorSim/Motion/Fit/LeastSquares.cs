using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace MonitorSim.Motion.Fit;

/// <summary>A linear least-squares problem, solved: y = X·p + noise.</summary>
/// <remarks>Columns are scaled to length 1 first, so that the condition number tells what the recording cannot, not which units are used; then a thin QR
/// decomposition, and the singular values of its small R (Golub and Van Loan, Matrix Computations, from memory).</remarks>
internal sealed class LeastSquares
{
    private readonly Matrix<double> _inverse;

    /// <param name="columns">X by column; at least one.</param>
    /// <param name="y">What is to be explained; more equations than columns.</param>
    public LeastSquares(IReadOnlyList<double[]> columns, double[] y)
    {
        var scales = columns.Select(column => Math.Sqrt(column.Sum(x => x * x)) is var length and > 0 ? length : 1).ToArray();
        var matrix = Matrix<double>.Build.Dense(y.Length, columns.Count, (row, column) => columns[column][row] / scales[column]);
        var qr = matrix.QR(QRMethod.Thin);
        var svd = qr.R.Svd();
        Condition = svd.S[0] / svd.S[^1];
        Weakest = [.. svd.VT.Row(columns.Count - 1)];
        var solution = svd.Solve(qr.Q.TransposeThisAndMultiply(Vector<double>.Build.Dense(y)));
        Solution = [.. solution.Select((value, i) => value / scales[i])];
        var scaled = svd.VT.TransposeThisAndMultiply(Matrix<double>.Build.DenseOfDiagonalVector(svd.S.Map(s => 1 / (s * s)))) * svd.VT;
        _inverse = scaled.MapIndexed((i, j, value) => value / scales[i] / scales[j]);
        var fitted = new double[y.Length];
        for (var i = 0; i < columns.Count; i++)
            for (var k = 0; k < y.Length; k++) fitted[k] += columns[i][k] * Solution[i];
        Residuals = [.. y.Zip(fitted, (measured, model) => measured - model)];
    }

    /// <summary>p.</summary>
    public double[] Solution { get; }

    /// <summary>y - X·p.</summary>
    public double[] Residuals { get; }

    /// <summary>Largest over smallest singular value of the scaled columns.</summary>
    public double Condition { get; }

    /// <summary>The combination of scaled columns that the data tell least about.</summary>
    public double[] Weakest { get; }

    /// <summary>The diagonal of (XᵀX)⁻¹ at a parameter: its variance for noise of variance 1.</summary>
    public double Variance(int parameter) => _inverse[parameter, parameter];

    /// <summary>How the errors of two parameters go together, -1 to 1.</summary>
    public double Correlation(int a, int b) => _inverse[a, b] / Math.Sqrt(_inverse[a, a] * _inverse[b, b]);

    /// <summary>Half the width of a 95 % confidence interval in standard errors (Student's t).</summary>
    public static double Quantile(double degreesOfFreedom) => StudentT.InvCDF(0, 1, Math.Max(1, degreesOfFreedom), 0.975);
}
