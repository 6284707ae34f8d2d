package evenrise.solver.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A process of its own with the classes of this one. */
final class Child {
    private Child() {}

    /** @return whether it ended by itself, and well, within {@code mostSeconds} */
    static boolean run(Class<?> main, double mostSeconds, Path output, List<String> arguments)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx" + System.getProperty("bench.heap", "6g"),
                "-cp",
                System.getProperty("java.class.path"),
                main.getName()));
        command.addAll(arguments);
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(output.toFile())
                .start();
        if (!process.waitFor((long) (mostSeconds * 1000), TimeUnit.MILLISECONDS)) {
            process.destroyForcibly().waitFor();
            return false;
        }
        return process.exitValue() == 0;
    }
}
