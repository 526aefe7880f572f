package rosinbook.log;

import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.encoder.Encoder;
import ch.qos.logback.core.encoder.EncoderBase;

/** Lets an encoder see nothing but {@link SafeEvent}s. */
final class SafeEncoder extends EncoderBase<ILoggingEvent> {
    private final Encoder<ILoggingEvent> form;

    SafeEncoder(Encoder<ILoggingEvent> form) {
        this.form = form;
    }

    @Override
    public void start() {
        form.start();
        super.start();
    }

    @Override
    public void stop() {
        super.stop();
        form.stop();
    }

    @Override
    public byte[] headerBytes() {
        return form.headerBytes();
    }

    @Override
    public byte[] encode(ILoggingEvent event) {
        return form.encode(new SafeEvent(event));
    }

    @Override
    public byte[] footerBytes() {
        return form.footerBytes();
    }
}
