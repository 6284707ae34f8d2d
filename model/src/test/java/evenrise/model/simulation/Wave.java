package evenrise.model.simulation;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * What the simulator computed: voltages and currents of each phase over time.
 *
 * @param volts of each phase at the bus, to the bus's neutral
 * @param amps that the loads of each phase draw together
 */
record Wave(double[] seconds, double[][] volts, double[][] amps) {
    private static final int MOST_SECONDS = 120;

    /** Runs ngspice in {@code folder}; where it is missing, the failure says how to get it. */
    static Wave of(Circuit circuit, double seconds, Path folder) throws IOException, InterruptedException {
        Path netlist = Files.writeString(folder.resolve("case.cir"), circuit.text(seconds));
        Path log = folder.resolve("case.log");
        Process process;
        try {
            process = new ProcessBuilder("ngspice", "-b", netlist.getFileName().toString())
                    .directory(folder.toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(log.toFile())
                    .start();
        } catch (IOException e) {
            throw new AssertionError("ngspice is missing. On Debian: apt-get install ngspice, or bash .ci/test.", e);
        }
        if (!process.waitFor(MOST_SECONDS, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            throw new AssertionError("the simulation did not end");
        }
        Path wave = folder.resolve("wave.txt");
        if (!Files.exists(wave)) {
            throw new AssertionError("no result: " + Files.readString(log));
        }
        return read(wave, circuit.phases());
    }

    private static Wave read(Path file, int phases) throws IOException {
        List<double[]> rows = new ArrayList<>();
        for (String line : Files.readAllLines(file)) {
            String[] words = line.strip().split("\\s+");
            double[] row = new double[words.length];
            for (int i = 0; i < row.length; i++) {
                row[i] = Double.parseDouble(words[i]);
            }
            rows.add(row);
        }
        double[] seconds = rows.stream().mapToDouble(row -> row[0]).toArray();
        double[][] volts = new double[phases][];
        double[][] amps = new double[phases][];
        for (int phase = 0; phase < phases; phase++) {
            int column = 1 + 2 * phase;
            volts[phase] = rows.stream().mapToDouble(row -> row[column]).toArray();
            amps[phase] = rows.stream().mapToDouble(row -> row[column + 1]).toArray();
        }
        return new Wave(seconds, volts, amps);
    }

    double peakAmps(int phase) {
        double most = 0;
        for (double each : amps[phase]) {
            most = Math.max(most, Math.abs(each));
        }
        return most;
    }

    /** Greatest magnitude from {@code from} on. */
    double peakAmps(int phase, double from) {
        double most = 0;
        for (int i = 0; i < seconds.length; i++) {
            if (seconds[i] >= from) {
                most = Math.max(most, Math.abs(amps[phase][i]));
            }
        }
        return most;
    }

    /** Rms voltage of the half-cycle that begins at {@code from}. */
    double rmsVolts(int phase, double from) {
        double squares = 0;
        int count = 0;
        double until = from + 1 / (2 * Circuit.HERTZ);
        for (int i = 0; i < seconds.length; i++) {
            if (seconds[i] >= from && seconds[i] < until) {
                squares += volts[phase][i] * volts[phase][i];
                count++;
            }
        }
        return Math.sqrt(squares / count);
    }
}
