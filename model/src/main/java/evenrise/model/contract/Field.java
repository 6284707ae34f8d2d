package evenrise.model.contract;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * States what one component of a record of the project or plan file means and which values it may take. The records
 * check themselves with it, the reader reports with it, and the JSON Schema is generated from it, so that the three
 * cannot disagree.
 */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
public @interface Field {
    /** What the value is, in the words of the trade; the unit is in the component's name. */
    String meaning();

    /** The value must be greater than this. */
    double above() default Double.NEGATIVE_INFINITY;

    /** The value must be at least this. */
    double min() default Double.NEGATIVE_INFINITY;

    /** The value must be at most this. */
    double max() default Double.POSITIVE_INFINITY;

    /**
     * The least size of a value that is not 0: what is nearer to 0 is a slip, and would make figures that no number can
     * hold. 0 for what is computed, where arithmetic leaves such remainders.
     */
    double least() default 1e-9;

    /** The JSON text of the value that stands in when the field is absent; empty where it is required or derived. */
    String byDefault() default "";

    /** Whether the field may be absent without a default of its own: the record derives the value, or does without. */
    boolean optional() default false;

    /** Fewest entries of a list, or characters of a text. */
    int atLeast() default 0;

    /** Whether no entry of a list may stand twice. */
    boolean distinct() default false;
}
