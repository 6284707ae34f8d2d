package evenrise.model.contract;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Marks a record that the files are made of. A builder {@code XBuilder} and withers are generated for it, so that a
 * component more changes no place that makes or copies one. Begin with {@code X.builder()}, which holds what a file
 * without the field gives ({@link Defaults}); the generated {@code unset()} knows no default.
 */
@RecordBuilder.Template(
        options =
                @RecordBuilder.Options(
                        builderMethodName = "unset",
                        copyMethodName = "copyOf",
                        inheritComponentAnnotations = false,
                        emptyDefaultForOptional = true,
                        addConcreteSettersForOptional = RecordBuilder.ConcreteSettersForOptionalMode.ENABLED,
                        useImmutableCollections = true,
                        addStaticBuilder = false,
                        addClassRetainedGenerated = true,
                        publicBuilderConstructors = false))
@Retention(RetentionPolicy.SOURCE)
@Target(ElementType.TYPE)
public @interface FileRecord {}
