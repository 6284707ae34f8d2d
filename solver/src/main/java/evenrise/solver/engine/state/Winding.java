package evenrise.solver.engine.state;

import evenrise.model.electrical.PhaseAngle;
import evenrise.model.electrical.TransformerDraw;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import java.util.List;

/**
 * What a transformer draws from its primary for the running currents of its secondary, in whole nanoamperes. Sums and
 * draws are laid out alike, a phase after another: magnitudes, real and imaginary parts of the fundamentals, third
 * harmonics. docs/model.md has the argument.
 */
public final class Winding {
    public static final int PHASES = 3;
    static final int REAL = PHASES;
    static final int IMAGINARY = 2 * PHASES;
    static final int THIRD = 3 * PHASES;
    /** How many numbers a sum has. */
    public static final int SIZE = 4 * PHASES;

    private static final double ROOT_3 = Math.sqrt(3);

    private final TransformerConnection connection;
    private final double ratio;
    private final int partnerStep;
    private final int[] primaryPhases;
    private final double turnReal;
    private final double turnImaginary;

    /** @param draw the same transformer as the model has it */
    public Winding(Transformer transformer, PhaseSystem primary, TransformerDraw draw) {
        connection = transformer.connection();
        ratio = draw.ratio();
        partnerStep = transformer.shiftDegrees() > 0 ? PHASES - 1 : 1;
        List<Phase> phases = draw.primaryPhases();
        primaryPhases = phases.stream().mapToInt(Phase::ordinal).toArray();
        double turn = connection == TransformerConnection.DELTA_WYE
                ? Math.toRadians(transformer.shiftDegrees())
                : phases.size() == 1
                        ? PhaseAngle.radians(primary, phases.get(0))
                        : PhaseAngle.radiansBetween(primary, phases.get(0), phases.get(1));
        turnReal = Math.cos(turn);
        turnImaginary = Math.sin(turn);
    }

    /** Running current of all primary phases together for that of one pole, where the secondary's phases are even. */
    double evenRatio() {
        return connection == TransformerConnection.SINGLE ? ratio * primaryPhases.length : ratio;
    }

    /** Writes into {@code drawn} what it draws for what {@code fed} holds, both from {@code at} on. */
    public void draw(long[] fed, long[] drawn, int at) {
        switch (connection) {
            case WYE_WYE -> {
                for (int i = at; i < at + SIZE; i++) {
                    drawn[i] = Math.round(ratio * fed[i]);
                }
            }
            case DELTA_WYE -> delta(fed, drawn, at);
            case SINGLE -> single(fed, drawn, at);
        }
    }

    private void delta(long[] fed, long[] drawn, int at) {
        double factor = ratio / ROOT_3;
        for (int phase = 0; phase < PHASES; phase++) {
            int own = at + phase;
            int other = at + (phase + partnerStep) % PHASES;
            double real = factor * (fed[own + REAL] - fed[other + REAL]);
            double imaginary = factor * (fed[own + IMAGINARY] - fed[other + IMAGINARY]);
            double third = factor * (fed[own + THIRD] + fed[other + THIRD]);
            drawn[own] = Math.round(Math.sqrt(real * real + imaginary * imaginary + third * third));
            drawn[own + REAL] = Math.round(real * turnReal - imaginary * turnImaginary);
            drawn[own + IMAGINARY] = Math.round(real * turnImaginary + imaginary * turnReal);
            drawn[own + THIRD] = Math.round(third);
        }
    }

    private void single(long[] fed, long[] drawn, int at) {
        double real = ratio * (fed[at + REAL] - fed[at + REAL + 1]);
        double imaginary = ratio * (fed[at + IMAGINARY] - fed[at + IMAGINARY + 1]);
        long running = Math.round(ratio * (fed[at] + fed[at + 1]));
        long third = Math.round(ratio * (fed[at + THIRD] + fed[at + THIRD + 1]));
        int sign = 1;
        for (int phase : primaryPhases) {
            drawn[at + phase] = running;
            drawn[at + REAL + phase] = Math.round(sign * (real * turnReal - imaginary * turnImaginary));
            drawn[at + IMAGINARY + phase] = Math.round(sign * (real * turnImaginary + imaginary * turnReal));
            drawn[at + THIRD + phase] = third;
            sign = -1;
        }
    }
}
