package evenrise.solver.script;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.teavm.backend.javascript.JSModuleType;
import org.teavm.tooling.TeaVMTargetType;
import org.teavm.tooling.TeaVMTool;
import org.teavm.tooling.TeaVMToolException;
import org.teavm.vm.TeaVMOptimizationLevel;

/** Compiles the referee to JavaScript, for the page that is mailed; run by the build once the classes are there. */
public final class RefereeScript {
    private static final String ENTRY = "evenrise.model.handout.PageReferee";

    private static final int MOST_TOLD = 40;

    /** What the script is made of, as classes or packed. */
    private static final Pattern REFEREE =
            Pattern.compile(".*/evenrise/(model|solver/script)/.*\\.class|.*evenrise-model[^/]*\\.jar");

    private RefereeScript() {}

    /** @param arguments the file to write; one that is newer than the classes is left as it is */
    public static void main(String[] arguments) throws IOException, TeaVMToolException {
        Path script = Path.of(arguments[0]);
        List<Path> classes = Stream.of(System.getProperty("java.class.path").split(File.pathSeparator))
                .map(Path::of)
                .toList();
        if (!isNewer(script, classes)) {
            Files.createDirectories(script.getParent());
            compile(script, classes);
        }
    }

    private static boolean isNewer(Path script, List<Path> classes) throws IOException {
        if (!Files.exists(script)) {
            return false;
        }
        FileTime made = Files.getLastModifiedTime(script);
        for (Path part : classes) {
            if (Files.exists(part)) {
                try (Stream<Path> files = Files.walk(part)) {
                    for (Path file : files.filter(
                                    each -> REFEREE.matcher(each.toString().replace('\\', '/'))
                                            .matches())
                            .toList()) {
                        if (Files.getLastModifiedTime(file).compareTo(made) >= 0) {
                            return false;
                        }
                    }
                }
            }
        }
        return true;
    }

    private static void compile(Path script, List<Path> classes) throws IOException, TeaVMToolException {
        TeaVMTool tool = new TeaVMTool();
        tool.setTargetType(TeaVMTargetType.JAVASCRIPT);
        tool.setJsModuleType(JSModuleType.COMMON_JS);
        tool.setMainClass(ENTRY);
        tool.setObfuscated(!Boolean.getBoolean("evenrise.readable"));
        tool.setOptimizationLevel(TeaVMOptimizationLevel.ADVANCED);
        tool.setFastDependencyAnalysis(false);
        tool.setAssertionsRemoved(true);
        tool.setClassPath(classes.stream().map(Path::toFile).toList());
        tool.setTargetDirectory(script.getParent().toFile());
        tool.setTargetFileName(script.getFileName().toString());
        tool.generate();
        List<String> problems = tool.getProblemProvider().getProblems().stream()
                .map(each -> each.getText() + " " + List.of(each.getParams()))
                .limit(MOST_TOLD)
                .toList();
        if (!problems.isEmpty() || Files.readString(script).matches("(?is).*<(/?script|!--).*")) {
            Files.deleteIfExists(script);
            throw new IllegalStateException("the referee cannot be compiled for a page: " + problems);
        }
    }
}
