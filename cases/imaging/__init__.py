"""Reading images that come from outside: bytes in, clean images and a few facts out. Knows no framework and no tables.

value       limits, refusals, what comes out
kinds       which kind a file is, by its content
pictures    JPEG, PNG, WebP, TIFF, HEIC
webp_size   how large a WebP image is, before its decoder takes memory for it
dicom       DICOM: de-identified anew, never as received
dicom_class, dicom_spacing  what it is kept as; the numbers of its scale
faults      what is said of an image that could not be read
closed_off  closes that process off: no file, no connection, so much memory and time
child       the process that reads one image and ends
turns       at most two of them on a machine
reading     the front door: starts that process
"""
