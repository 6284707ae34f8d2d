package evenrise.model.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.Needs;
import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LineSums;
import evenrise.model.electrical.TransformerDraw;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Secondary;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Line currents through transformers beside ngspice: windings as coupled inductors of 1000 H that are next to perfectly
 * coupled, resistors of 60, 40 and 20 A as loads.
 */
@Needs("ngspice")
@Tag("slow")
class TransformerBankTest {
    private static final double PRIMARY_VOLTS = 480 / Math.sqrt(3);

    @TempDir
    Path folder;

    /** Delta 480 V to wye 120 V, secondary leading: winding a between A and B, b between B and C, c between C and A. */
    @Test
    void deltaWyeDrawsWhatTheSimulatedBankDraws() throws Exception {
        String bank = supply()
                + winding("a", "la", "lb", "sa", "0", 120.0 / 480)
                + winding("b", "lb", "lc", "sb", "0", 120.0 / 480)
                + winding("c", "lc", "la", "sc", "0", 120.0 / 480)
                + load("sa", "0", 60, 120)
                + load("sb", "0", 40, 120)
                + load("sc", "0", 20, 120);
        Transformer transformer = Transformer.builder()
                .connection(TransformerConnection.DELTA_WYE)
                .secondary(Secondary.builder()
                        .system(PhaseSystem.THREE_PHASE)
                        .lineToNeutralVolts(120)
                        .build())
                .build();
        LineSums fed = new LineSums(PhaseSystem.THREE_PHASE);
        fed.add(List.of(Phase.A), 60, Lag.NONE, 0);
        fed.add(List.of(Phase.B), 40, Lag.NONE, 0);
        fed.add(List.of(Phase.C), 20, Lag.NONE, 0);

        holds(
                simulated(bank),
                TransformerDraw.of(transformer, PhaseSystem.THREE_PHASE, PRIMARY_VOLTS)
                        .running(fed));
    }

    /** 480 V between A and B to 120/240 V: 100 A and 60 A to neutral. */
    @Test
    void singleDrawsWhatTheSimulatedOneDraws() throws Exception {
        String bank = supply() + """
                Lp la lb 1000
                Ls1 s1 0 62.5
                Ls2 0 s2 62.5
                K1 Lp Ls1 0.99999999
                K2 Lp Ls2 0.99999999
                K3 Ls1 Ls2 0.99999999
                """ + load("s1", "0", 100, 120) + load("s2", "0", 60, 120);
        Transformer transformer = Transformer.builder()
                .connection(TransformerConnection.SINGLE)
                .primaryPhases(List.of(Phase.A, Phase.B))
                .secondary(Secondary.builder()
                        .system(PhaseSystem.SPLIT_PHASE)
                        .lineToNeutralVolts(120)
                        .build())
                .build();
        LineSums fed = new LineSums(PhaseSystem.SPLIT_PHASE);
        fed.add(List.of(Phase.A), 100, Lag.NONE, 0);
        fed.add(List.of(Phase.B), 60, Lag.NONE, 0);

        holds(
                simulated(bank),
                TransformerDraw.of(transformer, PhaseSystem.THREE_PHASE, PRIMARY_VOLTS)
                        .running(fed));
    }

    private static void holds(List<Double> simulated, LineSums ours) {
        for (Phase phase : Phase.values()) {
            assertThat(ours.runningAmps(phase))
                    .describedAs("line " + phase)
                    .isCloseTo(simulated.get(phase.ordinal()), within(0.005 * 40));
        }
    }

    private static String supply() {
        StringBuilder text = new StringBuilder("* bank\n");
        String[] lines = {"la", "lb", "lc"};
        for (int i = 0; i < lines.length; i++) {
            text.append("V")
                    .append(lines[i])
                    .append(" x")
                    .append(lines[i])
                    .append(" 0 AC ")
                    .append(PRIMARY_VOLTS)
                    .append(' ')
                    .append(-120 * i)
                    .append('\n');
            text.append("R")
                    .append(lines[i])
                    .append(" x")
                    .append(lines[i])
                    .append(' ')
                    .append(lines[i])
                    .append(" 1m\n");
        }
        return text.toString();
    }

    private static String winding(String name, String from, String to, String out, String back, double turns) {
        return "Lp" + name + " " + from + "r" + name + " " + to + " 1000\n"
                + "Rp" + name + " " + from + " " + from + "r" + name + " 1m\n"
                + "Ls" + name + " " + out + " " + back + " " + 1000 * turns * turns + "\n"
                + "K" + name + " Lp" + name + " Ls" + name + " 0.99999999\n";
    }

    private static String load(String node, String back, double amps, double volts) {
        return "Rl" + node + " " + node + " " + back + " " + volts / amps + "\n";
    }

    private List<Double> simulated(String bank) throws IOException, InterruptedException {
        String text = bank
                + ".ac lin 1 60 60\n.control\nrun\nprint mag(i(Vla)) mag(i(Vlb)) mag(i(Vlc)) > result.txt\n.endc\n.end\n";
        Files.writeString(folder.resolve("bank.cir"), text);
        Process process = new ProcessBuilder("ngspice", "-b", "bank.cir")
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("bank.log").toFile())
                .start();
        assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
        List<Double> amps = new ArrayList<>();
        for (String line : Files.readAllLines(folder.resolve("result.txt"))) {
            if (line.contains("=")) {
                amps.add(
                        Double.parseDouble(line.substring(line.indexOf('=') + 1).strip()));
            }
        }
        assertThat(amps).as(Files.readString(folder.resolve("bank.log"))).hasSize(3);
        return amps;
    }
}
