package evenrise.model;

import java.io.File;
import java.lang.annotation.ElementType;
import java.lang.annotation.Inherited;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.platform.commons.support.AnnotationSupport;

/**
 * Programs beside the JDK that tests run. Where one is missing they are skipped and say so; where the environment
 * variable CI is set they run all the same, and fail.
 */
@Target({ElementType.TYPE, ElementType.METHOD})
@Retention(RetentionPolicy.RUNTIME)
@Inherited
@ExtendWith(Needs.Condition.class)
public @interface Needs {
    /** Names of the programs. */
    String[] value();

    /** Looks for them. */
    final class Condition implements ExecutionCondition {
        @Override
        public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
            return AnnotationSupport.findAnnotation(context.getElement(), Needs.class)
                    .map(needs -> evaluate(List.of(needs.value()), System.getenv("CI")))
                    .orElseGet(() -> ConditionEvaluationResult.enabled("needs nothing"));
        }

        static ConditionEvaluationResult evaluate(List<String> programs, String ci) {
            List<String> missing =
                    programs.stream().filter(program -> find(program).isEmpty()).toList();
            if (missing.isEmpty() || ci != null && !ci.isBlank()) {
                return ConditionEvaluationResult.enabled("all programs are there, or must be");
            }
            return ConditionEvaluationResult.disabled(
                    "not installed here: " + String.join(", ", missing) + "; with CI set this would fail");
        }

        /** Where a program lies: as the property {@code evenrise.PROGRAM} says, or on the path. */
        public static Optional<Path> find(String program) {
            String given = System.getProperty("evenrise." + program);
            if (given != null) {
                return Optional.of(Path.of(given)).filter(Files::isExecutable);
            }
            String path = Optional.ofNullable(System.getenv("PATH")).orElse("");
            return Arrays.stream(path.split(File.pathSeparator))
                    .filter(folder -> !folder.isBlank())
                    .flatMap(folder -> Stream.of(Path.of(folder, program), Path.of(folder, program + ".exe")))
                    .filter(file -> Files.isRegularFile(file) && Files.isExecutable(file))
                    .findFirst();
        }
    }
}
